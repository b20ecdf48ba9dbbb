using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Physics.Plants;
using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// Finds prices backwards along a run. House, loop and the bed at the pipe go back by the minute, the body of the heap
/// and its life by ten minutes, with the slopes of the run's own hour. It is the adjoint of the plant but for the water
/// under way in the pipes, which is taken as settled, and for how the heat of air through the heap hangs on the bed's warmth.
/// </summary>
internal sealed class Pricing
{
    private const double Quick = 60;
    private const double VentWPerKPerK = 400;
    private const double VentMostWPerK = 4000;
    private const double CondenserYield = 0.6;
    private const double CondenserFullKelvin = 20;

    private readonly SeasonPlan _season;
    private readonly PlantBuild _build;
    private readonly HeapForm _form;
    private readonly SteadyLoop _loop;
    private readonly CellLife _life;
    private readonly WaterDrive _drive;
    private readonly double[] _flowAt;
    private readonly double _ductWPerK;
    private readonly bool _through;

    public Pricing(SeasonPlan season)
    {
        _season = season;
        _build = season.Build;
        _form = new HeapForm(_build.Heap);
        _loop = new SteadyLoop(_build.Loop, _build.Heap);
        _life = new CellLife(_build.Heap);
        _drive = new WaterDrive(season.Control);
        _flowAt = [.. Levels.Water.Select(level => FlowAt(_drive.Duty(level)))];
        DuctBuild duct = _build.Heap.Duct;
        _through = duct.ThroughHeap && season.Control.BlowerFitted;
        _ductWPerK = season.Control.BlowerFitted ? DuctBed.ConductanceWPerK(duct) : 0;
    }

    public HeapForm Form => _form;

    /// <summary>Finds the prices of a run.</summary>
    /// <param name="trace">The run.</param>
    /// <param name="floorWorth">Worth of a kelvin in the active zone for an hour, K·h, at each hour.</param>
    /// <param name="softK">Width over which the worth of warmth fades at the house's minimum, K; 0 where warmth is to be worth nothing.</param>
    /// <param name="edgeK">Width of the edge of the hottest half, which is the active zone, K; above 0.</param>
    /// <param name="lastHour">The hour to begin at, going back; the run's last when left out.</param>
    public Prices Of(Trace trace, double[] floorWorth, double softK, double edgeK, int? lastHour = null)
    {
        int hours = trace.Hours.Count - 1;
        Prices prices = new(hours, _form.Cells);
        Walk walk = new(this, prices);
        for (int h = lastHour ?? (hours - 1); h >= 0; h--)
        {
            walk.Hour(h, trace, floorWorth[h], softK, edgeK);
        }

        return prices;
    }

    /// <summary>How the active zone at one hour answers heat drawn at the hours before it, from coil, drum and duct, K/J.</summary>
    /// <param name="trace">The run.</param>
    /// <param name="hour">The hour.</param>
    /// <param name="edgeK">Width of the edge of the hottest half, K; above 0.</param>
    public Answer AnswerAt(Trace trace, int hour, double edgeK)
    {
        double[] pulse = new double[trace.Hours.Count - 1];
        pulse[hour] = 1;
        Prices prices = Of(trace, pulse, 0, edgeK, hour);
        double[] Back(Func<int, double> of) => [.. Enumerable.Range(0, hour + 1).Select(ago => of(hour - ago))];
        return new Answer(
            hour, Back(h => prices.Cell[h][_form.WallCell]), Back(h => prices.Drum[h]), Back(h => _through ? Mean(prices.Cell[h]) : prices.Cell[h][_form.DuctShell]));
    }

    // Air through the heap takes its heat from all the bed.
    private double Mean(double[] cells)
    {
        double sum = 0;
        for (int i = 0; i < cells.Length; i++)
        {
            sum += cells[i] * _form.VolumeM3[i];
        }

        return sum / _form.BedM3;
    }

    private double FlowAt(double level)
    {
        if (level <= 0)
        {
            return 0;
        }

        Plant plant = new(_build, _season.Weather, Plant.Fresh(_build, _season.Weather, _season.StartUtcMilliseconds));
        plant.Step(new PlantInputs(level, 1, 0, false, 0), 10);
        return plant.FlowLitresPerMinute;
    }

    private sealed class Walk(Pricing all, Prices prices)
    {
        private readonly HeapForm _form = all._form;
        private readonly HouseBuild _house = all._build.House;
        private readonly double[] _cell = new double[all._form.Cells];
        private readonly double[] _fast = new double[all._form.Cells];
        private readonly double[] _slow = new double[all._form.Cells];
        private readonly double[] _water = new double[all._form.Cells];
        private readonly double[] _perK = new double[all._form.Cells];
        private readonly double[] _celsius = new double[all._form.Cells];
        private readonly double[] _hot = new double[all._form.Cells];
        private readonly Chain _chain = new(all._form.Cells - all._form.Shells + 1);
        private readonly Chain _body = new(all._form.Shells + (all._form.HasDrum ? 1 : 0));
        private readonly Slopes[] _slopes = new Slopes[all._form.Cells];
        private double _drum;
        private double _tank;
        private double _air;
        private double _floor;

        public void Hour(int h, Trace trace, double floorWorth, double softK, double edgeK)
        {
            HeapState state = trace.Hours[h].Heap;
            Mark first = trace.Marks[h * Trace.MarksAnHour];
            HeapLinks links = _form.Links(state, first.Sky.WindMPerS);
            all._life.Under(first.Sky.OutsideC, first.Sky.Humidity, state.AgeSeconds);
            double blown = all._through ? BlownKgPerS(MeanBlowerDuty(trace, h)) : 0;
            for (int i = 0; i < _form.Cells; i++)
            {
                Cell cell = HeapForm.At(state, i);
                _perK[i] = 1 / cell.JPerK;
                _celsius[i] = cell.Celsius;
                _slopes[i] = Slopes.Of(all._life, cell, _form.VolumeM3[i], _form.PathM[i], blown * _form.VolumeM3[i]);
            }

            HotHalf(edgeK);
            for (int m = Trace.MarksAnHour - 1; m >= 0; m--)
            {
                Mark mark = trace.Marks[(h * Trace.MarksAnHour) + m];
                Body(links, floorWorth);
                Quickly(mark, links, softK);
                Weigh(h, mark);
            }

            if (all._through)
            {
                WeighThrough(h, state, first);
            }

            Array.Copy(_cell, prices.Cell[h], _cell.Length);
            Array.Copy(_fast, prices.Fast[h], _cell.Length);
            Array.Copy(_slow, prices.Slow[h], _cell.Length);
            Array.Copy(_water, prices.Water[h], _cell.Length);
            if (!double.IsFinite(_air + _cell.Sum() + _water.Sum()))
            {
                throw new InvalidOperationException($"The prices of hour {h} are no numbers; no plan may be sought with them.");
            }

            (prices.Drum[h], prices.Tank[h], prices.Air[h], prices.Floor[h]) = (_drum, _tank, _air, _floor);
        }

        // Each cell's part in the hottest half of the bed.
        private void HotHalf(double edgeK)
        {
            double low = _celsius.Min() - (20 * edgeK);
            double high = _celsius.Max() + (20 * edgeK);
            for (int tried = 0; tried < 40; tried++)
            {
                double mid = 0.5 * (low + high);
                double sum = 0;
                for (int i = 0; i < _form.Cells; i++)
                {
                    _hot[i] = _form.VolumeM3[i] / (0.5 * _form.BedM3) / (1 + Math.Exp((mid - _celsius[i]) / edgeK));
                    sum += _hot[i];
                }

                (low, high) = sum > 1 ? (mid, high) : (low, mid);
            }
        }

        // Ten minutes of conduction between shells, of losses and of life. The chain goes back as the sleeve's does.
        private void Body(HeapLinks links, double floorWorth)
        {
            int first = _form.HasDrum ? 1 : 0;
            if (_form.HasDrum)
            {
                _body.CapacityJPerK[0] = _form.DrumJPerK;
                _body.LinkWPerK[0] = links.Drum;
                _body.TemperatureC[0] = _drum;
            }

            for (int i = 0; i < _form.Shells; i++)
            {
                int node = i + first;
                _body.CapacityJPerK[node] = 1 / _perK[i];
                _body.LinkWPerK[node] = links.Body[i];
                _body.AmbientWPerK[node] = links.Air[i] + links.Ground[i];
                _body.SourceW[node] = floorWorth * _hot[i] / 3600;
                _body.TemperatureC[node] = _cell[i];
            }

            _body.Step(Trace.MarkSeconds);
            _drum = _form.HasDrum ? _body.TemperatureC[0] : _drum;
            for (int i = 0; i < _form.Cells; i++)
            {
                double byWarmth = i < _form.Shells
                    ? _body.TemperatureC[i + first] - _cell[i]
                    : Trace.MarkSeconds * floorWorth * _hot[i] / 3600 * _perK[i];
                Live(i, byWarmth);
            }
        }

        private void Live(int i, double byWarmth)
        {
            const double seconds = Trace.MarkSeconds;
            Slopes s = _slopes[i];
            CellRates worth = new(_cell[i], _fast[i], _slow[i], _water[i]);
            _cell[i] += byWarmth + (seconds * s.Heat.Dot(worth));
            _fast[i] += (seconds * s.Fast.Dot(worth)) - (byWarmth * _celsius[i] * Stuff.SolidsJPerKgK);
            _slow[i] += (seconds * s.Slow.Dot(worth)) - (byWarmth * _celsius[i] * Stuff.SolidsJPerKgK);
            _water[i] += (seconds * s.Water.Dot(worth)) - (byWarmth * _celsius[i] * Stuff.WaterJPerKgK);
        }

        // Ten minutes of house, loop, duct and sleeve, by the minute.
        private void Quickly(in Mark mark, HeapLinks links, double softK)
        {
            double airJPerK = _house.AirNodeJPerM2K * _house.FloorAreaM2;
            double floorJPerK = _house.FloorJPerM2K * _house.FloorAreaM2;
            double toFloor = _house.FloorUWPerM2K * _house.FloorAreaM2;
            double toGround = _house.GroundUWPerM2K * _house.FloorAreaM2;
            double over = VentWPerKPerK * (mark.HouseC - _house.VentAboveC);
            double vent = Math.Clamp(over, 0, VentMostWPerK)
                + (over is > 0 and < VentMostWPerK ? VentWPerKPerK * (mark.HouseC - mark.Sky.OutsideC) : 0);
            double shell = mark.Sky.SunWPerM2 > 1
                ? _house.LossWPerK
                : _house.LossWPerK - (_house.CurtainSaving * _house.GlazingAreaM2 * _house.GlazingUWPerM2K);
            double cold = (all._season.Control.HouseMinimumC - mark.HouseC) / softK;
            double source = softK > 0 ? 1 / (1 + Math.Exp(-Math.Clamp(cold, -30, 30))) / 3600 : 0;
            LoopShares loop = mark.FlowLitresPerMinute > 0
                ? all._loop.At(mark.FlowLitresPerMinute, mark.WallWPerK)
                : default;
            double duct = DuctWPerK(mark.BlowerDuty);
            int wall = _form.WallCell;
            int shellOfCoil = _form.CoilShell;
            for (double left = Trace.MarkSeconds; left > 0; left -= Quick)
            {
                double toTank = loop.CarriedWPerK * _tank;
                double toAir = loop.CarriedWPerK * _air;
                double fromWall = loop.CarriedWPerK * _cell[wall];
                double fromDrum = loop.CarriedWPerK * _drum;

                // Worth of a kelvin in the water on its way, from the tank back to the tank's outlet.
                double back = toTank - toAir;
                double supply = toAir + (loop.House * back);
                double atHouse = (1 - loop.House) * back;
                double afterCoil;
                double atDrum = 0;
                if (loop.Drum)
                {
                    atDrum = (loop.Line * supply) - fromDrum;
                    afterCoil = fromDrum - fromWall;
                }
                else
                {
                    afterCoil = (loop.Line * supply) - fromWall;
                }

                double atWall = (1 - loop.Coil) * afterCoil;
                double before = (loop.Coil * afterCoil) + fromWall;
                double atTank = (loop.Line * before) - toTank;

                double tankPull = all._loop.TankWPerK * (_air - _tank);
                double floorPull = toFloor * (_floor - _air);
                double ductPull = duct * (_air - _cell[_form.DuctShell]);
                double airGradient = source + atHouse - tankPull + floorPull - ((shell + vent) * _air) - ductPull;
                double floorGradient = -floorPull - (toGround * _floor);
                double tankGradient = atTank + tankPull;
                if (_form.HasSleeve)
                {
                    Sleeve(links, atWall);
                }
                else
                {
                    _cell[shellOfCoil] += Quick * atWall * _perK[shellOfCoil];
                }

                _cell[_form.DuctShell] += Quick * ductPull * _perK[_form.DuctShell];
                if (_form.HasDrum)
                {
                    _drum += Quick * atDrum / _form.DrumJPerK;
                }

                _tank += Quick * tankGradient / all._loop.TankJPerK;

                // The air node is light beside open vents: it takes its step backwards.
                double drag = shell + vent + toFloor;
                _air = (_air + (Quick * (airGradient + (drag * _air)) / airJPerK)) / (1 + (Quick * drag / airJPerK));
                _floor += Quick * floorGradient / floorJPerK;
            }
        }

        // The chain's matrix is its own mirror image, so prices go back through the very step heat goes forward by.
        private void Sleeve(HeapLinks links, double atWall)
        {
            int rings = links.Rings.Length;
            for (int j = 0; j <= rings; j++)
            {
                int cell = j < rings ? _form.Shells + j : _form.CoilShell;
                _chain.CapacityJPerK[j] = 1 / _perK[cell];
                _chain.LinkWPerK[j] = j < rings ? links.Rings[j] : 0;
                _chain.TemperatureC[j] = _cell[cell];
            }

            _chain.SourceW[0] = atWall;
            _chain.Step(Quick);
            for (int j = 0; j <= rings; j++)
            {
                _cell[j < rings ? _form.Shells + j : _form.CoilShell] = _chain.TemperatureC[j];
            }
        }

        private void Weigh(int h, in Mark mark)
        {
            double groundC = _house.GroundC + (all._build.Loop.LineExposure * (mark.Sky.OutsideC - _house.GroundC));
            double[] water = prices.WaterWorth[h];
            for (int k = 1; k < Levels.Water.Length; k++)
            {
                LoopShares loop = all._loop.At(all._flowAt[k], mark.WallWPerK);
                (double coil, double drum, double pipe, double tank) =
                    loop.Flux(mark.WallC, mark.DrumC, mark.TankC, mark.HouseC, groundC);
                double runs = Trace.MarkSeconds * all._drive.Share(Levels.Water[k]);
                prices.CoilJ[h][k] += runs * coil;
                prices.DrumJ[h][k] += runs * drum;
                water[k] += runs * ((_air * pipe) + (_tank * tank) - (_cell[_form.WallCell] * coil) - (_drum * drum));
            }

            double[] air = prices.AirWorth[h];
            if (all._through)
            {
                return;
            }

            double worth = (_air - _cell[_form.DuctShell]) * (mark.DuctShellC - mark.HouseC);
            for (int k = 1; k < Levels.Air.Length; k++)
            {
                double duty = Levels.Air[k];
                prices.DuctJ[h][k] += Trace.MarkSeconds * DuctWPerK(duty) * (mark.DuctShellC - mark.HouseC);
                air[k] += Trace.MarkSeconds * DuctWPerK(duty) * worth;
            }
        }

        // Air drawn through the heap for an hour: what every cell then makes, burns and loses otherwise, and the condenser's heat.
        private void WeighThrough(int h, HeapState state, in Mark mark)
        {
            const double seconds = Trace.MarkSeconds * Trace.MarksAnHour;
            double yield = CondenserYield * Math.Clamp((mark.ActiveZoneC - mark.HouseC) / CondenserFullKelvin, 0, 1);
            for (int i = 0; i < _form.Cells; i++)
            {
                Cell cell = HeapForm.At(state, i);
                CellRates worth = new(_cell[i], _fast[i], _slow[i], _water[i]);
                CellRates still = all._life.Of(cell, _form.VolumeM3[i], _form.PathM[i]);
                for (int k = 1; k < Levels.Air.Length; k++)
                {
                    (CellRates rates, double throughW) = all._life.Blown(
                        cell, _form.VolumeM3[i], _form.PathM[i], BlownKgPerS(Levels.Air[k]) * _form.VolumeM3[i]);
                    CellRates more = rates.Less(still, 1);
                    prices.AirWorth[h][k] += seconds * (more.Dot(worth) + (_air * yield * throughW));
                    prices.DuctJ[h][k] -= seconds * more.HeatW;
                }
            }
        }

        // Dry air through a cubic metre of the bed, kg/s.
        private double BlownKgPerS(double duty) =>
            duty * all._build.Heap.Duct.FullFlowM3PerS * all._life.DryAirKgPerM3 / _form.BedM3;

        private static double MeanBlowerDuty(Trace trace, int h)
        {
            double sum = 0;
            for (int m = 0; m < Trace.MarksAnHour; m++)
            {
                sum += trace.Marks[(h * Trace.MarksAnHour) + m].BlowerDuty;
            }

            return sum / Trace.MarksAnHour;
        }

        private double DuctWPerK(double duty)
        {
            double carried = duty * all._build.Heap.Duct.FullFlowM3PerS * DuctBed.AirJPerM3K;
            return carried > 0 ? carried * (1 - Math.Exp(-all._ductWPerK / carried)) : 0;
        }
    }
}
