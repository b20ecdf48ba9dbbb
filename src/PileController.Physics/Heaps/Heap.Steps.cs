namespace PileController.Physics.Heaps;

/// <content>The two steps: the quick one of pipe, drum and ducts, and the slow one of the body.</content>
public sealed partial class Heap
{
    private const double PressurePa = 101_325;
    private const double DryAirGasConstant = 287.05;
    private const double VapourGasConstant = 461.5;

    // Best rates of the two pools, 1/s: 10 % and 0.9 % of what is left a day (common practice, no source: they give
    // the trade's weeks of strong heat and a season of steady heat).
    private const double FastPerSecond = 0.10 / 86_400;
    private const double SlowPerSecond = 0.009 / 86_400;

    // How much of a pool's best rate mesophiles alone reach.
    private const double FastMesophilic = 0.8;
    private const double SlowMesophilic = 0.25;

    // Loose, dry cover: about 0.08 W/(m·K) (published class 0.03 to 0.30, Ahn et al. 2009).
    private const double CoverWPerMK = 0.08;

    // A loose heap settles within some weeks (common practice, no source).
    private const double SettlingSeconds = 14 * 86_400;

    // Share of a cell's temperature above its surroundings that the air may carry off in one slow step.
    private const double LargestAirShare = 0.2;

    // Resistance of the ground under the heap, m²·K/W (common practice, no source).
    private const double GroundM2KPerW = 1.5;

    /// <summary>The quick step: what the water took from the bed, the drum and the ducts, and the sleeve's own conduction.</summary>
    /// <param name="seconds">
    /// Length, s; at most <see cref="LongestQuickSeconds"/> (or 10 where that is less), or as long as a slow step where the
    /// draw was found with <see cref="WallAfter"/>.
    /// </param>
    /// <param name="coilJ">Heat the coil's water took from the bed against the pipe, J.</param>
    /// <param name="drumJ">Heat the water took from the drum, J.</param>
    /// <param name="ductJ">Heat the duct air took from its shell, J.</param>
    public void StepQuick(double seconds, double coilJ, double drumJ, double ductJ)
    {
        if (_sleeve is not null)
        {
            Chain chain = _sleeve.Chain;
            for (int i = 0; i < Sleeve.Rings; i++)
            {
                chain.TemperatureC[i] = _temperatureC[_shells + i];
            }

            chain.TemperatureC[Sleeve.Rings] = _temperatureC[_coilShell];
            chain.SourceW[0] = -coilJ / seconds;
            chain.Step(seconds);
            _enthalpyJ[_shells] -= coilJ;
            _ledger.CoilJ += coilJ;
            for (int i = 0; i < Sleeve.Rings; i++)
            {
                int outer = i + 1 < Sleeve.Rings ? _shells + i + 1 : _coilShell;
                double flux = seconds * chain.LinkWPerK[i] * (chain.TemperatureC[i + 1] - chain.TemperatureC[i]);
                _enthalpyJ[_shells + i] += flux;
                _enthalpyJ[outer] -= flux;
            }

            for (int i = _shells; i < _cells; i++)
            {
                _temperatureC[i] = _enthalpyJ[i] / _capacityJPerK[i];
            }

            _temperatureC[_coilShell] = _enthalpyJ[_coilShell] / _capacityJPerK[_coilShell];
        }

        if (_drum)
        {
            _drumC -= drumJ / DrumJPerK;
            _ledger.DrumJ += drumJ;
        }

        if (ductJ != 0)
        {
            _enthalpyJ[_ductShell] -= ductJ;
            _temperatureC[_ductShell] = _enthalpyJ[_ductShell] / _capacityJPerK[_ductShell];
            _ledger.DuctJ += ductJ;
        }
    }

    /// <summary>
    /// How the bed against the pipe will answer a quick step, so that a draw can be found for a long one without
    /// overshooting: where it ends undrawn, and how far each watt drawn all the while lowers that.
    /// </summary>
    /// <param name="seconds">Length of the step, s.</param>
    public (double UndrawnC, double KelvinPerWatt) WallAfter(double seconds)
    {
        if (_sleeve is null)
        {
            return (_temperatureC[_coilShell], 0);
        }

        Chain chain = _sleeve.Chain;
        Array.Clear(chain.TemperatureC);
        chain.SourceW[0] = 1;
        chain.Step(seconds);
        double kelvinPerWatt = chain.TemperatureC[0];
        for (int i = 0; i < Sleeve.Rings; i++)
        {
            chain.TemperatureC[i] = _temperatureC[_shells + i];
        }

        chain.TemperatureC[Sleeve.Rings] = _temperatureC[_coilShell];
        chain.SourceW[0] = 0;
        chain.Step(seconds);
        return (chain.TemperatureC[0], kelvinPerWatt);
    }

    /// <summary>Wets the body evenly, as with a hose over the top that soaks in. It brings the heat of its own temperature.</summary>
    /// <param name="kilograms">Water, kg, 0 or more.</param>
    /// <param name="celsius">Its temperature, °C.</param>
    /// <returns>The enthalpy it brought above 0 °C, J; the ledger does not hold it.</returns>
    public double Wet(double kilograms, double celsius)
    {
        Require.NotNegative(kilograms, "kg");
        for (int i = 0; i < _cells; i++)
        {
            double share = kilograms * _volumeM3[i] / _bedM3;
            _waterKg[i] += share;
            _enthalpyJ[i] += share * Stuff.WaterJPerKgK * celsius;
        }

        RefreshBed();
        Sort();
        return kilograms * Stuff.WaterJPerKgK * celsius;
    }

    /// <summary>The slow step: microbes, air, water, conduction between shells and to the surroundings.</summary>
    /// <param name="seconds">Length, s; usually <see cref="SlowStepSeconds"/>.</param>
    /// <param name="site">What surrounds the heap.</param>
    public void StepSlow(double seconds, in HeapSite site)
    {
        Live(seconds, site);
        Conduct(seconds, site);
        RefreshBed();
        Sort();
    }

    /// <summary>
    /// Longest slow step in which the air carries off no more than a part of what any cell holds, s: heat leaves with the air
    /// of the step's start, so a body that lets much air through allows shorter steps than half an hour.
    /// </summary>
    /// <param name="site">What surrounds the heap.</param>
    public double LongestSlowSeconds(in HeapSite site)
    {
        double outsideKgPerM3 = GasKgPerM3(site.OutsideC, site.OutsideHumidity);
        double longest = double.PositiveInfinity;
        for (int i = 0; i < _cells; i++)
        {
            double t = _temperatureC[i];
            double airKgPerS = outsideKgPerM3 * (_volumeM3[i] / _build.HeightM * HeapAir.DraughtMPerS(
                _build.PermeabilityM2 * _build.FreshPermeabilityRatio, _build.HeightM, _pathM[i], outsideKgPerM3, GasKgPerM3(t, 1))
                + (site.BlowerM3PerS * _volumeM3[i] / _bedM3));
            double wattsPerK = airKgPerS * (SaturatedJPerKg(t + 1) - SaturatedJPerKg(t));
            longest = wattsPerK > 0 ? Math.Min(longest, LargestAirShare * _capacityJPerK[i] / wattsPerK) : longest;
        }

        return Math.Max(SlowStepSeconds, longest);
    }

    private static double GasKgPerM3(double celsius, double humidity)
    {
        double vapourPa = humidity * SaturationPa(celsius);
        double kelvin = celsius + 273.15;
        return ((PressurePa - vapourPa) / (DryAirGasConstant * kelvin)) + (vapourPa / (VapourGasConstant * kelvin));
    }

    private static double SaturatedJPerKg(double celsius)
    {
        double vapourPa = SaturationPa(celsius);
        return (Stuff.GasJPerKgK * celsius)
            + (0.621945 * vapourPa / (PressurePa - vapourPa) * (Stuff.VapourJPerKg + (Stuff.VapourJPerKgK * celsius)));
    }

    private void Live(double seconds, in HeapSite site)
    {
        double vapourInPa = site.OutsideHumidity * SaturationPa(site.OutsideC);
        double outsideK = site.OutsideC + 273.15;
        double dryInKgPerM3 = (PressurePa - vapourInPa) / (DryAirGasConstant * outsideK);
        double outsideKgPerM3 = dryInKgPerM3 + (vapourInPa / (VapourGasConstant * outsideK));
        double ratioIn = 0.621945 * vapourInPa / (PressurePa - vapourInPa);
        double enthalpyIn = (Stuff.GasJPerKgK * site.OutsideC)
            + (ratioIn * (Stuff.VapourJPerKg + (Stuff.VapourJPerKgK * site.OutsideC)));
        double permeabilityM2 = _build.PermeabilityM2
            * (1 + ((_build.FreshPermeabilityRatio - 1) * Portable.Exp(-_ageSeconds / SettlingSeconds)));
        _ageSeconds += seconds;
        double throughJ = 0;
        for (int i = 0; i < _cells; i++)
        {
            double t = _temperatureC[i];
            double kelvin = t + 273.15;
            double water = _waterKg[i];
            double dry = _fastKg[i] + _slowKg[i] + _inertKg[i];
            double moisture = water / (water + dry);
            double saturationPa = SaturationPa(t);

            // Gas in the pores is near saturation until the bed is nearly dry.
            double vapourPa = saturationPa * Math.Min(1, moisture / 0.25);
            double insideKgPerM3 = ((PressurePa - vapourPa) / (DryAirGasConstant * kelvin))
                + (vapourPa / (VapourGasConstant * kelvin));
            double planM2 = _volumeM3[i] / _build.HeightM;
            double draughtKg = seconds * planM2 * dryInKgPerM3 * HeapAir.DraughtMPerS(
                permeabilityM2, _build.HeightM, _pathM[i], outsideKgPerM3, insideKgPerM3);
            double blownKg = seconds * site.BlowerM3PerS * dryInKgPerM3 * _volumeM3[i] / _bedM3;
            double airKg = draughtKg + blownKg;

            double gas = Math.Max(0, 1 - (((dry / Stuff.SolidsKgPerM3) + (water * 0.001)) / _volumeM3[i]));
            double slowdown = Microbes.Moisture(moisture) * Microbes.FreeAirSpace(gas) * seconds;
            double warm = Microbes.Thermophilic.At(t);
            double mild = Microbes.Mesophilic.At(t);
            double fast = _fastKg[i] * FastPerSecond * slowdown * Math.Min(1, warm + (FastMesophilic * mild));
            double slow = _slowKg[i] * SlowPerSecond * slowdown * Math.Min(1, warm + (SlowMesophilic * mild));
            double demandKg = Stuff.OxygenPerSolids * (fast + slow);
            double oxygenInKg = Stuff.OxygenInAir * airKg;
            double takenKg = HeapAir.TakenKgPerS(demandKg, oxygenInKg);
            double share = demandKg > 0 ? takenKg / demandKg : 0;
            fast *= share;
            slow *= share;
            double burnt = fast + slow;
            double made = Stuff.WaterPerSolids * burnt;

            // Carbon dioxide takes the oxygen's place; the gas leaves with the vapour its warmth can hold.
            double gasOutKg = airKg + ((Stuff.CarbonDioxidePerSolids - Stuff.OxygenPerSolids) * burnt);
            double vapourOutKg = Math.Min(
                gasOutKg * 0.621945 * vapourPa / (PressurePa - vapourPa), (0.5 * water) + (airKg * ratioIn));
            double gasOutJ = gasOutKg * Stuff.GasJPerKgK * t;
            double vapourOutJ = vapourOutKg * (Stuff.VapourJPerKg + (Stuff.VapourJPerKgK * t));
            double inJ = airKg * enthalpyIn;
            double blown = airKg > 0 ? blownKg / airKg : 0;
            double generatedJ = Stuff.HeatPerSolids * burnt;

            _fastKg[i] -= fast;
            _slowKg[i] -= slow;
            _waterKg[i] += made + (airKg * ratioIn) - vapourOutKg;
            _enthalpyJ[i] += generatedJ + inJ - gasOutJ - vapourOutJ;
            _ledger.GeneratedJ += generatedJ;
            _ledger.AirInJ += inJ * (1 - blown);
            _ledger.AirOutJ += (gasOutJ + vapourOutJ) * (1 - blown);
            throughJ += (gasOutJ + vapourOutJ - inJ) * blown;
            _ledger.BurntKg += burnt;
            _ledger.OxygenInKg += oxygenInKg;
            _ledger.OxygenTakenKg += takenKg;
            _ledger.WaterMadeKg += made;
            _ledger.VapourInKg += airKg * ratioIn;
            _ledger.VapourOutKg += vapourOutKg;
        }

        _ledger.ThroughAirJ += throughJ;
        _throughAirW = throughJ / seconds;
    }

    private void Conduct(double seconds, in HeapSite site)
    {
        int first = _drum ? 1 : 0;
        double film = 1 / (6 + (3 * site.WindMPerS));
        double cover = _build.CoverThicknessM / CoverWPerMK;
        int rim = _shells - 1;
        double sideWPerK = _grid.SideAreaM2 / ((0.5 * _grid.ThicknessM / _conductivity[rim]) + cover + film);
        if (_drum)
        {
            _body.CapacityJPerK[0] = DrumJPerK;
            _body.TemperatureC[0] = _drumC;
            _body.LinkWPerK[0] = 2 * Math.PI * _grid.EdgeM[0] * _build.HeightM * _conductivity[0] / (0.5 * _grid.ThicknessM);
        }

        for (int i = 0; i < _shells; i++)
        {
            int node = i + first;
            double capacity = Capacity(i);
            double plan = _grid.PlanAreaM2[i];
            double top = TopWPerK(i, plan, cover + film);
            double ground = GroundWPerK(i, plan);
            double side = i == rim ? sideWPerK : 0;
            double all = top + ground + side;
            _capacityJPerK[i] = capacity;
            _body.CapacityJPerK[node] = capacity;
            _body.TemperatureC[node] = _enthalpyJ[i] / capacity;
            _body.AmbientWPerK[node] = all;
            _body.AmbientC[node] = (((top + side) * site.OutsideC) + (ground * site.GroundC)) / all;
            _body.LinkWPerK[node] = i < rim ? _grid.FaceM(i) * 0.5 * (_conductivity[i] + _conductivity[i + 1]) : 0;
        }

        _body.Step(seconds);
        double[] t = _body.TemperatureC;
        for (int i = 0; i < _shells; i++)
        {
            int node = i + first;
            double plan = _grid.PlanAreaM2[i];
            double topJ = seconds * TopWPerK(i, plan, cover + film) * (t[node] - site.OutsideC);
            double groundJ = seconds * GroundWPerK(i, plan) * (t[node] - site.GroundC);
            double sideJ = i == rim ? seconds * sideWPerK * (t[node] - site.OutsideC) : 0;
            _enthalpyJ[i] -= topJ + groundJ + sideJ;
            _ledger.TopJ += topJ;
            _ledger.GroundJ += groundJ;
            _ledger.SideJ += sideJ;
            if (i < rim)
            {
                double outward = seconds * _body.LinkWPerK[node] * (t[node] - t[node + 1]);
                _enthalpyJ[i] -= outward;
                _enthalpyJ[i + 1] += outward;
            }
        }

        if (_drum)
        {
            double fromBed = seconds * _body.LinkWPerK[0] * (t[1] - t[0]);
            _enthalpyJ[0] -= fromBed;
            _drumC += fromBed / _body.CapacityJPerK[0];
        }
    }

    // Heat made all along the height reaches top and ground over a quarter of it on the mean.
    private double TopWPerK(int shell, double planM2, double outerM2KPerW) =>
        planM2 / ((0.25 * _build.HeightM / _conductivity[shell]) + outerM2KPerW);

    private double GroundWPerK(int shell, double planM2) =>
        planM2 / ((0.25 * _build.HeightM / _conductivity[shell]) + GroundM2KPerW);

    private double Capacity(int cell) =>
        ((_fastKg[cell] + _slowKg[cell] + _inertKg[cell]) * Stuff.SolidsJPerKgK) + (_waterKg[cell] * Stuff.WaterJPerKgK);

    private void RefreshBed()
    {
        for (int i = 0; i < _cells; i++)
        {
            double capacity = Capacity(i);
            _capacityJPerK[i] = capacity;
            _temperatureC[i] = _enthalpyJ[i] / capacity;
            double solids = (_fastKg[i] + _slowKg[i] + _inertKg[i]) / Stuff.SolidsKgPerM3;
            double gas = Math.Max(0, 1 - ((solids + (_waterKg[i] * 0.001)) / _volumeM3[i]));
            _conductivity[i] = Stuff.ConductivityWPerMK(
                _waterKg[i] / _volumeM3[i], gas, _temperatureC[i], SaturationPa(_temperatureC[i]));
        }

        _sleeve?.Refresh(_conductivity.AsSpan(_shells), _capacityJPerK.AsSpan(_shells), _capacityJPerK[_coilShell]);
    }

    private void Sort()
    {
        for (int i = 0; i < _cells; i++)
        {
            int cell = _order[i];
            int at = i;
            while (at > 0 && _temperatureC[_order[at - 1]] < _temperatureC[cell])
            {
                _order[at] = _order[at - 1];
                at--;
            }

            _order[at] = cell;
        }

        double left = 0.5 * _bedM3;
        double sum = 0;
        for (int i = 0; i < _cells && left > 0; i++)
        {
            double part = Math.Min(left, _volumeM3[_order[i]]);
            sum += part * _temperatureC[_order[i]];
            left -= part;
        }

        ActiveZoneC = sum / (0.5 * _bedM3);
        double weighted = _volumeM3[_coilShell] * _temperatureC[_coilShell];
        for (int i = _shells; i < _cells; i++)
        {
            weighted += _volumeM3[i] * _temperatureC[i];
        }

        TurnsShellC = weighted / _grid.VolumeM3[_coilShell];
    }
}
