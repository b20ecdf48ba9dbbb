using System.Text;
using PileController.Control.Readings;

namespace PileController.Control.Decisions.Wording;

/// <summary>Which probes are not believed, and what is done without them.</summary>
internal static class DoubtWords
{
    // The faults of more than these are too much for one breath.
    private const int MostFaults = 2;

    private static readonly string[] Small = ["no", "one", "two", "three", "four"];

    public static void Add(StringBuilder text, Decision decision)
    {
        RigReadings readings = decision.Readings;
        int believed = 0;
        for (Channel channel = Channel.HeapCore; channel <= Channel.HeapEdge; channel++)
        {
            believed += readings[channel].IsGood ? 1 : 0;
        }

        Group(text, readings, Channel.HeapCore, Channel.HeapEdge, Without(believed));
        Group(text, readings, Channel.Supply, Channel.Return, "the draw is inferred");
        Group(text, readings, Channel.House, Channel.House, "the want is reckoned from the air outside");
        Group(text, readings, Channel.Floor, Channel.DuctAir, "");
        Group(text, readings, Channel.Sun, Channel.Level, "");
        Group(text, readings, Channel.Humidity, Channel.CarbonDioxide, "");
        Group(text, readings, Channel.SpareOne, Channel.SpareFour, "");
        if (!decision.Estimate.Trusted && decision.Curb != Curb.Probes)
        {
            text.Append(" The estimate of the heap is not to be trusted now.");
        }
    }

    private static string Without(int believed) => believed == 0
        ? "the estimate goes on by reckoning alone"
        : $"the estimate goes on from the other {(believed == 1 ? "one" : Small[believed])}";

    private static void Group(StringBuilder text, RigReadings readings, Channel first, Channel last, string then)
    {
        int doubted = 0;
        for (Channel channel = first; channel <= last; channel++)
        {
            doubted += Doubted(readings[channel]) ? 1 : 0;
        }

        if (doubted == 0)
        {
            return;
        }

        bool brief = doubted > MostFaults;
        text.Append(' ');
        int named = 0;
        for (Channel channel = first; channel <= last; channel++)
        {
            if (Doubted(readings[channel]))
            {
                named++;
                text.Append(named == 1 ? "The " : named == doubted ? " and the " : ", the ").Append(ProbeName(channel));
                text.Append(brief ? "" : " " + Fault(readings[channel].Quality));
            }
        }

        text.Append(brief ? " are not believed" : doubted == 1 ? " and is not believed" : "; neither is believed");
        text.Append(then.Length > 0 ? "; " : "").Append(then).Append('.');
    }

    private static bool Doubted(Reading reading) => reading.Quality is not (ReadingQuality.Good or ReadingQuality.NotFitted);

    private static string ProbeName(Channel channel) => channel switch
    {
        Channel.HeapCore => "core probe",
        Channel.HeapMiddle => "middle probe",
        Channel.HeapTurns => "turns probe",
        Channel.HeapEdge => "edge probe",
        Channel.Supply => "supply probe",
        Channel.Return => "return probe",
        Channel.House => "house probe",
        Channel.Floor => "floor probe",
        Channel.Tank => "tank probe",
        Channel.Outside => "outside probe",
        Channel.DuctAir => "duct probe",
        Channel.Sun => "sun probe",
        Channel.Flow => "flow meter",
        Channel.PumpPower => "pump's power meter",
        Channel.BlowerPower => "blower's power meter",
        Channel.Battery => "battery probe",
        Channel.Leak => "leak switch",
        Channel.Level => "level switch",
        Channel.Humidity => "humidity probe",
        Channel.CarbonDioxide => "carbon dioxide probe",
        Channel.SpareOne => "first spare probe",
        Channel.SpareTwo => "second spare probe",
        Channel.SpareThree => "third spare probe",
        _ => "fourth spare probe",
    };

    private static string Fault(ReadingQuality quality) => quality switch
    {
        ReadingQuality.NoAnswer => "does not answer",
        ReadingQuality.BadChecksum => "garbles its answer",
        ReadingQuality.Shorted => "sits on a shorted wire",
        ReadingQuality.PowerOnValue => "shows only its power-on value",
        ReadingQuality.Late or ReadingQuality.Stale => "answers too late",
        ReadingQuality.OutOfRange => "reads what it cannot",
        ReadingQuality.TooFast => "jumps",
        ReadingQuality.Stuck => "has not moved for hours",
        ReadingQuality.Disagrees => "contradicts its neighbours",
        _ => "is in doubt",
    };
}
