using PileController.Control;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;
using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// The battery under a plan hour by hour, as if it held nothing back: a lock-out spares the very electricity for the want
/// of which it came, so the charge that is lived hides what the plan lacks. Here it may fall below nothing. A plan is held
/// above the first lock-out that is within its power: past it the blower is lost until the battery has come back a good way,
/// which in a dark week takes days. Whether a plan would do better to lose it there is not looked at.
/// </summary>
internal sealed class Charging
{
    // A little above the voltage at which it holds anything back: an hour's mean hides how its runs lie, share of the charge.
    private const double Head = 0.01;

    // A limit that the battery passes, or all but passes, with nothing drawn at all is not held, share of the charge.
    private const double Spare = 0.1;

    // So much that no longer fits in makes what is spent before worth nothing, share of the charge. With a sharp edge an hour
    // before a battery that just fills would be worth all and nothing by turns.
    private const double SpillSoft = 0.02;

    private readonly PowerBuild _power;
    private readonly double _capacityJ;
    private readonly double[] _netJ;
    private readonly double[] _need;
    private readonly int _from;
    private readonly double _first;
    private readonly double[] _kept;
    private readonly int[] _lowest;

    /// <summary>The battery along a run.</summary>
    /// <param name="season">The season.</param>
    /// <param name="trace">The run.</param>
    /// <param name="plan">The plan that was lived.</param>
    /// <param name="power">What pump and blower take.</param>
    public Charging(SeasonPlan season, Trace trace, Schedule plan, PowerTaken power)
    {
        _power = season.Build.Power;
        _capacityJ = 3600 * _power.BatteryWattHours;
        int hours = plan.Hours;
        _from = Math.Min(hours, Math.Max(1, trace.LitHour));
        _netJ = new double[hours];
        _need = new double[hours];
        _kept = new double[hours];
        Charge = new double[hours];
        _first = trace.Hours[0].BatteryCharge;
        InterlockLimits limits = season.Control.Limits;
        double[] volts = season.Control.BlowerFitted ? [limits.BatteryLowV, limits.BatteryEmptyV] : [limits.BatteryEmptyV];
        double undrawn = _first;
        for (int h = 0; h < hours; h++)
        {
            (double sun, double livedW, bool held) = Lived(trace, h);
            double planned = h < _from ? 0 : power.OfHourJ(plan.Water[h], plan.Air[h]);
            double taken = held ? Math.Max(planned, 3600 * livedW) : 3600 * livedW;
            _netJ[h] = (3600 * ((_power.PanelWatts * DayPower.Yield * sun * 0.001) - _power.IdleWatts)) - taken;
            undrawn = Math.Min(1, undrawn + ((_netJ[h] + Math.Min(planned, taken)) / _capacityJ));
            if (undrawn < 0)
            {
                // What is empty gives nothing more, and is not the plan's debt.
                _netJ[h] -= undrawn * _capacityJ;
                undrawn = 0;
            }

            double load = power.RunningW(plan.Water[h], plan.Air[h]);
            _need[h] = volts.Select(limit => Head + Need(limit, sun, load)).Where(need => undrawn > need + Spare)
                .DefaultIfEmpty(double.NegativeInfinity).First();
        }

        Days = (hours - _from + 23) / 24;
        _lowest = new int[Days];
        Lack = new double[Days];
        Follow(new double[hours]);
    }

    /// <summary>Charge at the end of each hour, 1 when full.</summary>
    public double[] Charge { get; }

    /// <summary>Days from lighting on.</summary>
    public int Days { get; }

    /// <summary>How far each day's charge falls below what holds nothing back, share of the full charge; below 0 where it stays above.</summary>
    public double[] Lack { get; }

    /// <summary>Follows the charge with so much more spent in each hour than the plan spends.</summary>
    /// <param name="moreJ">More that is spent, J.</param>
    public void Follow(double[] moreJ)
    {
        Array.Fill(Lack, double.NegativeInfinity);
        double charge = _first;
        for (int h = 0; h < _need.Length; h++)
        {
            double to = charge + ((_netJ[h] - moreJ[h]) / _capacityJ);
            _kept[h] = to > 1 ? Math.Exp((1 - to) / SpillSoft) : 1;
            charge = Math.Min(1, to);
            Charge[h] = charge;
            int day = (h - _from) / 24;
            double lack = _need[h] - charge;
            if (h >= _from && lack > Lack[day])
            {
                (Lack[day], _lowest[day]) = (lack, h);
            }
        }
    }

    /// <summary>What a joule spent in each hour is worth, by the worth of the charge on each day.</summary>
    /// <param name="worth">Worth of a full charge on each day, K·h.</param>
    /// <param name="perJ">Filled with the worth of a joule in each hour, K·h/J.</param>
    public void Price(double[] worth, double[] perJ)
    {
        double ahead = 0;
        for (int h = _need.Length - 1; h >= _from; h--)
        {
            int day = (h - _from) / 24;
            ahead += _lowest[day] == h ? worth[day] / _capacityJ : 0;
            ahead *= _kept[h];
            perJ[h] = ahead;
        }
    }

    private static (double SunWPerM2, double LoadW, bool Held) Lived(Trace trace, int hour)
    {
        double sun = 0;
        double load = 0;
        bool held = false;
        for (int m = hour * Trace.MarksAnHour; m < (hour + 1) * Trace.MarksAnHour; m++)
        {
            Mark mark = trace.Marks[m];
            sun += mark.Sky.SunWPerM2 / Trace.MarksAnHour;
            load += mark.LoadW / Trace.MarksAnHour;
            held |= mark.Held;
        }

        return (sun, load, held);
    }

    // The charge at which the battery's voltage stands at the limit, under this load and sun.
    private double Need(double limitV, double sun, double loadW)
    {
        double empty = Volts(0, sun, loadW);
        return (limitV - empty) / (Volts(1, sun, loadW) - empty);
    }

    private double Volts(double charge, double sun, double loadW)
    {
        Battery battery = new(_power, charge, 0);
        battery.Step(0, loadW, sun);
        return battery.Volts;
    }
}
