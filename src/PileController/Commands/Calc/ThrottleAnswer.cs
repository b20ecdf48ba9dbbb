using PileController.Physics.Hydraulics;

namespace PileController.Commands.Calc;

/// <summary>The same with the valve at one opening.</summary>
internal sealed record ThrottleAnswer(double OpenShare, double FlowLitresPerMinute, double HeadM)
{
    public static ThrottleAnswer Of(double open, OperatingPoint point) => new(open, point.FlowLitresPerMinute, point.HeadM);
}
