using System.Text.Json.Serialization;
using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Control.Foresight;

/// <summary>What the controller remembers of the house: how it stands, what the hour brought, what was learned.</summary>
/// <param name="AirC">Air, °C: as last read, or as the model has it.</param>
/// <param name="FloorC">Floor, °C: as last read, or as the model has it.</param>
/// <param name="TankC">Water in the tank, °C: as last read, or as the model has it.</param>
/// <param name="Tally">The hour so far.</param>
/// <param name="Learned">What was learned.</param>
public readonly record struct HouseMemory(double AirC, double FloorC, double TankC, HouseTally Tally, HouseLearned Learned)
{
    private const int Parts = 4;
    private const double ProbeW = 100;

    // Shorter hours (a start, a gap) teach nothing, s.
    private const double LeastSeconds = 3300;

    // Neither does one in which air outside or draw were mostly guessed.
    private const double MostUnseenShare = 0.1;

    // In an hour that vents, a gain hardly shows in the air; it must not be magnified without end.
    private const double LeastKelvinPerW = 2e-4;

    /// <summary>What the loss told is to be multiplied by, 0.5 to 2.</summary>
    [JsonIgnore]
    public double LossFactor => Learned.LossFactor;

    /// <summary>Heat the house gains beyond model and draw, by local hour of day, W.</summary>
    [JsonIgnore]
    public double[] GainW => Learned.GainW;

    /// <summary>The house now.</summary>
    [JsonIgnore]
    public HouseState State => new(AirC, FloorC, TankC);

    /// <summary>Nothing seen yet.</summary>
    public static HouseMemory Fresh => new(10, 10, 10, HouseTally.Fresh, HouseLearned.Fresh);

    /// <summary>Takes in one tick. Only the end of an hour costs more than some sums.</summary>
    /// <param name="settings">What was told of the house.</param>
    /// <param name="memory">What the tick before handed on.</param>
    /// <param name="readings">Validated readings.</param>
    /// <param name="draw">Metered draw of the tick before.</param>
    /// <param name="backupRan">Whether backup heat ran.</param>
    /// <param name="outsideC">Air outside, °C.</param>
    /// <param name="forecast">The forecast, for the sun where no probe tells it; or null.</param>
    /// <param name="seconds">Time since the tick before, s.</param>
    /// <param name="at">Now.</param>
    public static HouseMemory Step(
        ControlSettings settings, in HouseMemory memory, RigReadings readings, in MeteredDraw draw, bool backupRan, double outsideC,
        Forecast? forecast, double seconds, in Instant at)
    {
        long hour = HourClock.Of(at);
        bool airSeen = readings.TryGet(Channel.House, out double air);
        HouseMemory now = hour == memory.Tally.Hour ? memory
            : memory.Tally.Hour < 0 ? Begin(settings, airSeen ? air : outsideC)
            : memory.Close(settings, forecast, airSeen, at.OffsetMinutes);
        now = now with
        {
            AirC = airSeen ? air : now.AirC,
            FloorC = readings.TryGet(Channel.Floor, out double floor) ? floor : now.FloorC,
            TankC = readings.TryGet(Channel.Tank, out double tank) ? tank : now.TankC,
        };
        HouseTally tally = hour == memory.Tally.Hour
            ? now.Tally
            : HouseTally.Fresh with { Begun = new HourBegun(hour, now.State, airSeen, false) };
        bool sunSeen = readings.TryGet(Channel.Sun, out double sun);
        bool seen = readings.TryGet(Channel.Outside, out _)
            && readings.TryGet(Channel.Supply, out _) && readings.TryGet(Channel.Return, out _);
        return now with
        {
            Tally = tally with
            {
                Seconds = tally.Seconds + seconds,
                OutsideKelvinSeconds = tally.OutsideKelvinSeconds + (outsideC * seconds),
                WaterJ = tally.WaterJ + (draw.WaterWatts * seconds),
                AirJ = tally.AirJ + (draw.AirWatts * seconds),
                SunJPerM2 = tally.SunJPerM2 + (sunSeen ? sun * seconds : 0),
                SunSeconds = tally.SunSeconds + (sunSeen ? seconds : 0),
                Heated = tally.Heated || backupRan,
                UnseenSeconds = tally.UnseenSeconds + (seen ? 0 : seconds),
            },
        };
    }

    private static HouseMemory Begin(ControlSettings settings, double airC) => Fresh with
    {
        AirC = airC,
        FloorC = Math.Max(airC, settings.House.GroundC),
        TankC = airC,
    };

    // The model lives the hour once more. What it misses of the air is learned; floor and tank are its own where no probe
    // tells them, for a reading follows within the same tick.
    private HouseMemory Close(ControlSettings settings, Forecast? forecast, bool airSeen, int offsetMinutes)
    {
        if (Tally.Seconds <= 0)
        {
            return this;
        }

        int local = HourClock.Local(Tally.Hour, offsetMinutes);
        double? sun = Tally.SunSeconds > 0.5 * Tally.Seconds ? Tally.SunJPerM2 / Tally.SunSeconds : Outlook.Sun(forecast, Tally.Hour);
        double gain = sun is { } shone ? shone * settings.House.SunM2 * Learned.SunFactor : Learned.GainW[local];
        HouseModel model = HouseModel.Of(settings, this);
        HouseState end = Lived(model, gain);
        HouseLearned learned = Learned;
        if (airSeen && Tally.StartSeen && !Tally.Heated && Tally.Seconds >= LeastSeconds
            && Tally.UnseenSeconds <= MostUnseenShare * Tally.Seconds)
        {
            double perW = Math.Max(LeastKelvinPerW, (Lived(model, gain + ProbeW).AirC - end.AirC) / ProbeW);
            double outside = Tally.OutsideKelvinSeconds / Tally.Seconds;
            learned = learned.After(settings, local, 0.5 * (AirC + Tally.Start.AirC) - outside, sun, gain, (AirC - end.AirC) / perW);
        }

        return this with { AirC = end.AirC, FloorC = end.FloorC, TankC = end.TankC, Learned = learned };
    }

    private HouseState Lived(in HouseModel model, double gainW)
    {
        HouseState state = Tally.Start;
        double seconds = Tally.Seconds;
        for (int i = 0; i < Parts; i++)
        {
            state = model.Step(
                state, seconds / Parts, Tally.OutsideKelvinSeconds / seconds, gainW, Tally.WaterJ / seconds, Tally.AirJ / seconds);
        }

        return state;
    }
}
