using PileController.Control;
using PileController.Control.Interlocks;

namespace PileController.Benchmarks.Bounds;

/// <summary>One row of the interlock table, judged on the true plant: limit, band and persistence are the table's own.</summary>
internal sealed class Guard(string id, ControlSettings settings)
{
    private readonly Interlock _row = InterlockTable.All[InterlockTable.IndexOf(id)];
    private double _passedSeconds;

    public bool Acting { get; private set; }

    public bool Judge(double value, double seconds)
    {
        double limit = _row.Limit(settings);
        double band = Acting ? _row.ReleaseBand : 0;
        bool passed = _row.Comparison == Comparison.Above ? value > limit - band : value < limit + band;
        Acting = passed && (Acting || _passedSeconds * 1000 >= _row.PersistenceMilliseconds);
        _passedSeconds = passed ? _passedSeconds + seconds : 0;
        return Acting;
    }
}
