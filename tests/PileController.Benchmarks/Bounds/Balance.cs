namespace PileController.Benchmarks.Bounds;

/// <summary>
/// Moves a plan and finds what the floor and the battery's charge are worth at once, in the season as its prices see it:
/// each hour's levels go towards those of greatest worth, no further than their steps, and the worth of the floor on each
/// day is the least under which the active zone, as far as its answers tell, keeps above it; that of the charge likewise the
/// least under which the battery holds nothing back. So the plant need not be lived once for every correction of either.
/// </summary>
internal sealed class Balance
{
    private const int Rounds = 100;

    // What is lacking may be asked for by and by, K.
    private const double MostLackK = 1;

    // Worth of a kelvin in the active zone, K·h: how far it may rise at once, and steps of the search for it.
    private const double MostRise = 3;
    private const double FirstStep = 0.2;
    private const double MostStep = 3;
    private const double LeastStep = 1e-4;

    // The same of a full charge, K·h: there is more to be won by a charge than by a kelvin.
    private const double MostChargeRise = 200;
    private const double FirstChargeStep = 2;
    private const double MostChargeStep = 40;
    private const double LeastChargeStep = 1e-3;

    // A joule of electricity costs a little, so that of two plans as good the sparing one is chosen, K·h.
    private const double ElectricWorthPerJ = 2e-8;

    // Where all is worth alike, as after the last cold night, little is drawn: what a full hour is to be worth, K·h.
    private const double Sparing = 1e-3;

    private readonly int _hours;
    private readonly int[] _at;
    private readonly double[][] _coil;
    private readonly double[][] _drum;
    private readonly double[][] _duct;
    private readonly PowerTaken _power;
    private readonly Charging? _charging;

    /// <summary>A season.</summary>
    /// <param name="answers">Answers of the zone at some hours of it.</param>
    /// <param name="at">The hours at which the zone is held, one a day.</param>
    /// <param name="hours">Length of the season.</param>
    /// <param name="power">What pump and blower take.</param>
    /// <param name="charging">The battery along the run; null where there is none.</param>
    public Balance(IReadOnlyList<Answer> answers, int[] at, int hours, PowerTaken power, Charging? charging)
    {
        _power = power;
        _charging = charging;
        _hours = hours;
        _at = at;
        Answer[] near = [.. at.Select(hour => answers.MinBy(a => Math.Abs(a.Hour - hour))!)];
        _coil = [.. near.Select(a => a.Coil)];
        _drum = [.. near.Select(a => a.Drum)];
        _duct = [.. near.Select(a => a.Duct)];
    }

    /// <summary>The worth of floor and charge, and the plan moved under them.</summary>
    /// <param name="plan">The plan that was lived.</param>
    /// <param name="prices">Prices along it.</param>
    /// <param name="worth">Worth of the floor they were found with, K·h per K, one for each hour at which it is held.</param>
    /// <param name="chargeWorth">Worth of a full charge on each day, K·h.</param>
    /// <param name="lackK">How far the zone was below the floor at these hours, K; below 0 where it was above.</param>
    /// <param name="stepWater">How far each hour's level of the water may move.</param>
    /// <param name="stepAir">The same for the air.</param>
    /// <param name="fromHour">Nothing is drawn before this hour.</param>
    /// <param name="evenWorth">Worth that is too little to choose a level by, K·h: levels within it share the hour.</param>
    public (double[] Worth, double[] ChargeWorth, Schedule Plan) Move(
        Schedule plan, Prices prices, double[] worth, double[] chargeWorth, double[] lackK, double[] stepWater, double[] stepAir, int fromHour,
        double evenWorth)
    {
        int days = _at.Length;
        Multipliers floor = new(worth, FirstStep, MostStep, LeastStep, MostRise);
        Multipliers charge = new(chargeWorth, FirstChargeStep, MostChargeStep, LeastChargeStep, MostChargeRise);
        double[] now = floor.Now;
        double[] perJ = new double[_hours];
        double[] spentJ = new double[_hours];
        Schedule moved = plan.Copy();
        double[] coilJ = new double[_hours];
        double[] drumJ = new double[_hours];
        double[] ductJ = new double[_hours];
        for (int round = 0; round <= Rounds; round++)
        {
            _charging?.Price(charge.Now, perJ);
            Levelled(plan, prices, worth, now, perJ, stepWater, stepAir, fromHour, evenWorth, moved, coilJ, drumJ, ductJ, spentJ);
            if (round == Rounds)
            {
                break;
            }

            for (int d = 0; d < days; d++)
            {
                floor.Move(d, Math.Min(MostLackK, lackK[d]) + Lowered(d, coilJ, drumJ, ductJ));
            }

            if (_charging is null)
            {
                continue;
            }

            _charging.Follow(spentJ);
            for (int d = 0; d < chargeWorth.Length; d++)
            {
                charge.Move(d, _charging.Lack[d]);
            }
        }

        return (now, charge.Now, moved);
    }

    private void Levelled(
        Schedule plan, Prices prices, double[] worth, double[] now, double[] perJ, double[] stepWater, double[] stepAir, int fromHour,
        double evenWorth, Schedule moved, double[] coilJ, double[] drumJ, double[] ductJ, double[] spentJ)
    {
        double[] coil = new double[_hours];
        double[] drum = new double[_hours];
        double[] duct = new double[_hours];
        for (int d = 0; d < _at.Length; d++)
        {
            double more = now[d] - worth[d];
            if (more == 0)
            {
                continue;
            }

            int last = Math.Min(_at[d], _coil[d].Length - 1);
            for (int ago = 0; ago <= last; ago++)
            {
                int h = _at[d] - ago;
                coil[h] += more * _coil[d][ago];
                drum[h] += more * _drum[d][ago];
                duct[h] += more * _duct[d][ago];
            }
        }

        for (int h = fromHour; h < _hours; h++)
        {
            double[] inCoil = prices.CoilJ[h];
            double[] inDrum = prices.DrumJ[h];
            double[] inDuct = prices.DuctJ[h];
            double electric = ElectricWorthPerJ + perJ[h];
            double waterTo = Best(Levels.Water, prices.WaterWorth[h], k => (coil[h] * inCoil[k]) + (drum[h] * inDrum[k]) + (electric * _power.WaterJ[k]), evenWorth);
            double airTo = Best(Levels.Air, prices.AirWorth[h], k => (duct[h] * inDuct[k]) + (electric * _power.AirJ[k]), evenWorth);
            double water = plan.Water[h] + Math.Clamp(waterTo - plan.Water[h], -stepWater[h], stepWater[h]);
            double air = plan.Air[h] + Math.Clamp(airTo - plan.Air[h], -stepAir[h], stepAir[h]);
            coilJ[h] = Levels.Between(Levels.Water, inCoil, water) - Levels.Between(Levels.Water, inCoil, plan.Water[h]);
            drumJ[h] = Levels.Between(Levels.Water, inDrum, water) - Levels.Between(Levels.Water, inDrum, plan.Water[h]);
            ductJ[h] = Levels.Between(Levels.Air, inDuct, air) - Levels.Between(Levels.Air, inDuct, plan.Air[h]);
            spentJ[h] = _power.OfHourJ(water, air) - _power.OfHourJ(plan.Water[h], plan.Air[h]);
            (moved.Water[h], moved.Air[h]) = (water, air);
        }
    }

    // How far the zone of a day comes down by what is drawn beyond the plan, K.
    private double Lowered(int day, double[] coilJ, double[] drumJ, double[] ductJ)
    {
        double sum = 0;
        int last = Math.Min(_at[day], _coil[day].Length - 1);
        for (int ago = 0; ago <= last; ago++)
        {
            int h = _at[day] - ago;
            sum += (_coil[day][ago] * coilJ[h]) + (_drum[day][ago] * drumJ[h]) + (_duct[day][ago] * ductJ[h]);
        }

        return sum;
    }

    // The level of greatest worth, but without a jump: a jump of many like hours at once no worth of the floor could steer.
    private static double Best(double[] levels, double[] worth, Func<int, double> dearer, double even)
    {
        Span<double> net = stackalloc double[levels.Length];
        double most = double.NegativeInfinity;
        for (int k = 0; k < levels.Length; k++)
        {
            net[k] = worth[k] - dearer(k) - (Sparing * levels[k]);
            most = Math.Max(most, net[k]);
        }

        double sum = 0;
        double shares = 0;
        for (int k = 0; k < levels.Length; k++)
        {
            double under = (most - net[k]) / even;
            double share = under > 20 ? 0 : Math.Exp(-under);
            sum += share * levels[k];
            shares += share;
        }

        return sum / shares;
    }
}
