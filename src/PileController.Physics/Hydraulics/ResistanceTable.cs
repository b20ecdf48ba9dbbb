namespace PileController.Physics.Hydraulics;

/// <summary>
/// Head lost per flow squared, m per (L/min)², over the ratio of flow to kinematic viscosity, (L/min)/(m²/s):
/// straight between points that lie 64 to the octave, found from the bits of the number without a logarithm.
/// </summary>
internal sealed class ResistanceTable
{
    private const int PointsPerOctaveBits = 6;
    private const int IndexShift = 52 - PointsPerOctaveBits;

    // 2^8 to 2^32: Reynolds numbers from below 1 in the widest pipe to above 1e6 in the narrowest.
    private const double Lowest = 256;
    private const double Highest = 4294967296;

    private static readonly long FirstIndex = BitConverter.DoubleToInt64Bits(Lowest) >> IndexShift;

    private readonly double[] _values;

    public ResistanceTable(IReadOnlyList<PipeRun> runs)
    {
        int count = (int)((BitConverter.DoubleToInt64Bits(Highest) >> IndexShift) - FirstIndex) + 1;
        _values = new double[count];
        for (int i = 0; i < count; i++)
        {
            _values[i] = Evaluate(runs, Point(i));
        }
    }

    /// <summary>Head of the speed that 1 L/min makes in a bore, m.</summary>
    public static double VelocityHeadM(double innerDiameterM)
    {
        double velocity = Flow.VelocityMPerS(1, innerDiameterM);
        return velocity * velocity / (2 * Flow.GravityMPerS2);
    }

    /// <summary>Resistance at a ratio, with its slope; laminar below the table, constant above it.</summary>
    public double At(double ratio, out double slope)
    {
        if (ratio < Lowest)
        {
            double value = _values[0] * Lowest / ratio;
            slope = -value / ratio;
            return value;
        }

        int index = (int)((BitConverter.DoubleToInt64Bits(ratio) >> IndexShift) - FirstIndex);
        if (index >= _values.Length - 1)
        {
            slope = 0;
            return _values[^1];
        }

        double left = Point(index);
        slope = (_values[index + 1] - _values[index]) / (Point(index + 1) - left);
        return _values[index] + (slope * (ratio - left));
    }

    private static double Point(int index) => BitConverter.Int64BitsToDouble((FirstIndex + index) << IndexShift);

    private static double Evaluate(IReadOnlyList<PipeRun> runs, double ratio)
    {
        double sum = 0;
        foreach (PipeRun run in runs)
        {
            double reynolds = 4 * ratio / 60_000 / (Math.PI * run.InnerDiameterM);
            sum += ((run.FrictionAt(reynolds) * run.LengthM / run.InnerDiameterM) + run.FittingK) * VelocityHeadM(run.InnerDiameterM);
        }

        return sum;
    }
}
