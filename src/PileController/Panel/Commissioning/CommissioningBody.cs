using PileController.Commissioning;
using PileController.Commissioning.Sheets;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Settings;

namespace PileController.Panel.Commissioning;

/// <summary>The tests, the one that runs, and what was proven so far.</summary>
internal sealed record CommissioningBody(
    IReadOnlyList<TestBody> Tests, RunBody? Run, IReadOnlyList<ProbeBody> Probes, IReadOnlyList<ActuatorBody> Actuators, IReadOnlyList<SheetEntry> Sheet, string? SheetFault)
{
    private const int NewestEntries = 20;

    /// <summary>The body.</summary>
    public static CommissioningBody Of(PileSettings settings, PageTest? test, Sheet sheet, string? sheetFault) => new(
        [.. Catalogue.Ids.Select(id => TestBody.Of(id, settings))],
        test is null ? null : RunBody.Of(test),
        [.. settings.Rig.Probes.Where(probe => ChannelTable.Of(probe.Channel).Unit == "°C").Select(probe => ProbeBody.Of(ChannelTable.Of(probe.Channel).Name, probe.OffsetKelvin, sheet))],
        [.. Enum.GetValues<Actuator>().Select(actuator => ActuatorBody.Of(actuator, sheet))],
        [.. sheet.Entries.Reverse().Take(NewestEntries)],
        sheetFault);
}

/// <summary>One test that can be begun.</summary>
internal sealed record TestBody(string Id, string Title, IReadOnlyList<string> Cautions, IReadOnlyList<string> Moving, int Steps, string? WhyNot)
{
    /// <summary>The body.</summary>
    public static TestBody Of(string id, PileSettings settings)
    {
        TestAsk usual = new();
        string? whyNot = Catalogue.WhyNot(id, settings, usual);
        Procedure procedure = Catalogue.Of(id, settings, usual);
        return new TestBody(id, procedure.Title, procedure.Cautions, procedure.Moving, procedure.Phases.Count, whyNot);
    }
}

/// <summary>The test that runs, or is over and was not put away.</summary>
internal sealed record RunBody(
    string Test, string Title, string Who, int Step, int Steps, string? Say, bool Awaits, Question? Question, double ElapsedSeconds, double? MostSeconds,
    bool Ended, bool Kept, IReadOnlyList<Outcome> Outcomes)
{
    /// <summary>The body.</summary>
    public static RunBody Of(PageTest test)
    {
        Walk walk = test.Walk;
        double? most = walk.Phase is not { Asks: false } phase ? null : phase.Enough is null ? phase.LeastSeconds : phase.MostSeconds;
        return new RunBody(
            walk.Procedure.Id, walk.Procedure.Title, test.Who, walk.Step, walk.Procedure.Phases.Count, walk.Phase?.Say, walk.AwaitsAnswer,
            walk.Phase?.Question, walk.ElapsedSeconds, most, walk.Ended, test.Kept, walk.Found());
    }
}

/// <summary>How a temperature probe is calibrated.</summary>
/// <param name="Channel">Which.</param>
/// <param name="OffsetK">The offset the settings give it, K.</param>
/// <param name="CalibratedUtcMs">When it was last calibrated on the sheet; null for never.</param>
/// <param name="Verdict">How that came out.</param>
internal sealed record ProbeBody(string Channel, double OffsetK, long? CalibratedUtcMs, Soundness? Verdict)
{
    /// <summary>The body.</summary>
    public static ProbeBody Of(string channel, double offsetKelvin, Sheet sheet)
    {
        (SheetEntry Entry, Outcome Outcome)? latest = sheet.Latest(channel, "ice", "pair");
        return new ProbeBody(channel, offsetKelvin, latest?.Entry.By.AtUtcMilliseconds, latest?.Outcome.Verdict);
    }
}

/// <summary>When an actuator last gave proof.</summary>
/// <param name="Actuator">Which.</param>
/// <param name="ProvenUtcMs">When it was last exercised on the sheet; null for never.</param>
/// <param name="Verdict">How that came out.</param>
internal sealed record ActuatorBody(Actuator Actuator, long? ProvenUtcMs, Soundness? Verdict)
{
    /// <summary>The body.</summary>
    public static ActuatorBody Of(Actuator actuator, Sheet sheet)
    {
        (SheetEntry Entry, Outcome Outcome)? latest = sheet.Latest(Procedure.WireName(actuator), "exercise");
        return new ActuatorBody(actuator, latest?.Entry.By.AtUtcMilliseconds, latest?.Outcome.Verdict);
    }
}
