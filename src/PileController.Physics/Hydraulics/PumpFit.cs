namespace PileController.Physics.Hydraulics;

/// <summary>Turns measured points into a pump curve.</summary>
public static class PumpFit
{
    /// <summary>Least-squares curve through points carried to full duty by the affinity laws; power is their mean.</summary>
    /// <param name="points">Two or more points with different flows.</param>
    /// <param name="startDuty">Duty below which the pump stands still, 0 to 1.</param>
    /// <exception cref="ArgumentException">Too few points, a duty outside 0 to 1, or points whose head does not fall with the flow.</exception>
    public static PumpCurve Fit(IReadOnlyList<PumpPoint> points, double startDuty = 0)
    {
        if (points.Count < 2)
        {
            throw new ArgumentException($"A pump curve needs 2 points or more; given {points.Count}.", nameof(points));
        }

        double n = points.Count, sumX = 0, sumXx = 0, sumY = 0, sumXy = 0, watts = 0;
        foreach (PumpPoint point in points)
        {
            if (!(point.Duty > 0 && point.Duty <= 1))
            {
                throw new ArgumentException($"The duty of a pump point must lie above 0 and up to 1; given {point.Duty}.", nameof(points));
            }

            double square = point.Duty * point.Duty;
            double x = point.FlowLitresPerMinute * point.FlowLitresPerMinute / square;
            double y = point.HeadM / square;
            (sumX, sumXx, sumY, sumXy) = (sumX + x, sumXx + (x * x), sumY + y, sumXy + (x * y));
            watts += point.Watts / (square * point.Duty);
        }

        double slope = ((n * sumXy) - (sumX * sumY)) / ((n * sumXx) - (sumX * sumX));
        double shutoff = (sumY - (slope * sumX)) / n;
        return slope < 0 && shutoff > 0
            ? new PumpCurve(shutoff, Math.Sqrt(-shutoff / slope), watts / n, startDuty)
            : throw new ArgumentException("The head of the pump points must fall as their flow rises.", nameof(points));
    }
}
