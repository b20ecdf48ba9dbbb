using PileController.Control.Decisions;
using PileController.Control.Foresight;

namespace PileController.Seasons;

/// <summary>One row of the table that holds chances against what came.</summary>
/// <param name="Said">Mean chance said in these nights.</param>
/// <param name="Happened">Share of them in which the house held.</param>
/// <param name="Nights">How many.</param>
internal sealed record ReliabilityRow(double Said, double Happened, int Nights);

/// <summary>
/// How good the evenings' statements were, by the mean square of chance less outcome (Brier 1950, from memory), beside two
/// that know nothing of the weather: the share of nights held so far, and last night again.
/// </summary>
internal sealed record TonightResult(
    int Nights, double Brier, double BrierClimatology, double BrierPersistence, IReadOnlyList<ReliabilityRow> Reliability);

/// <summary>Holds the statement of each evening against the true house until the morning. Counts from lighting on.</summary>
internal sealed class NightScore
{
    private const int Bins = 5;
    private const double NothingKnown = 0.5;

    private readonly double _minimumC;
    private readonly double[] _said = new double[Bins];
    private readonly int[] _held = new int[Bins];
    private readonly int[] _nights = new int[Bins];
    private Tonight? _due;
    private double _leastC;
    private bool _heated;
    private int _count;
    private int _heldNights;
    private double _before = NothingKnown;
    private double _square;
    private double _squareClimatology;
    private double _squarePersistence;

    public NightScore(double minimumC) => _minimumC = minimumC;

    /// <summary>What it came to; null before the first night.</summary>
    public TonightResult? Result => _count == 0 ? null : new TonightResult(
        _count, _square / _count, _squareClimatology / _count, _squarePersistence / _count,
        [.. Enumerable.Range(0, Bins).Where(i => _nights[i] > 0)
            .Select(i => new ReliabilityRow(_said[i] / _nights[i], (double)_held[i] / _nights[i], _nights[i]))]);

    /// <summary>Takes in one tick that has just been lived.</summary>
    public void Add(Decision decision, double houseC, bool lit)
    {
        if (_due is { } due && decision.At.UtcMilliseconds >= due.UntilUtcMilliseconds)
        {
            Close(due);
        }

        if (_due is null && lit && decision.Tonight is { } said && Math.Floor(decision.At.LocalHour) == Tonight.EveningHour)
        {
            (_due, _leastC, _heated) = (said, double.PositiveInfinity, false);
        }

        _leastC = Math.Min(_leastC, houseC);
        _heated |= decision.Outputs.BackupOn;
    }

    private void Close(Tonight said)
    {
        // A night that backup heat has saved was not held by the heap.
        double held = _leastC >= _minimumC && !_heated ? 1 : 0;
        double usual = (NothingKnown + _heldNights) / (1 + _count);
        _square += Squared(said.ChanceOfHolding - held);
        _squareClimatology += Squared(usual - held);
        _squarePersistence += Squared(_before - held);
        int bin = Math.Min(Bins - 1, (int)(said.ChanceOfHolding * Bins));
        _said[bin] += said.ChanceOfHolding;
        _held[bin] += (int)held;
        _nights[bin]++;
        _count++;
        _heldNights += (int)held;
        _before = held;
        _due = null;
    }

    private static double Squared(double value) => value * value;
}
