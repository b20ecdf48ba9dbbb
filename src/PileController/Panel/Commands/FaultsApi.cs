using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Control.Readings;
using PileController.Rigs.Faults;

namespace PileController.Panel.Commands;

/// <summary><c>POST</c> and <c>DELETE /api/faults</c>: break and mend the simulated rig.</summary>
internal static class FaultsApi
{
    /// <summary>Adds the routes.</summary>
    public static void Map(RouteGroupBuilder api)
    {
        api.MapPost("/faults", AddAsync);
        api.MapDelete("/faults", Remove);
    }

    private static async Task<IResult> AddAsync(HttpRequest request, PanelSetup setup)
    {
        if (setup.Faults is not { } switches)
        {
            return NotHere();
        }

        BodyFields body = await BodyFields.ReadAsync(request, "kind", "channel", "size");
        FaultKind kind = body.Choice<FaultKind>("kind");
        Channel? channel = ChannelOf(body.Text("channel", 40), setup);
        Require(new Fault(kind, channel, FaultRules.UsualSize(kind)), setup);
        (double least, double most) = FaultRules.SizesOf(kind, channel);
        Fault fault = new(kind, channel, body.Number("size", least, most, FaultRules.UsualSize(kind)));
        Require(fault, setup);
        switches.Add(fault);
        return TypedResults.Accepted((string?)null);
    }

    private static IResult Remove(PanelSetup setup, string? channel, string? kind)
    {
        if (setup.Faults is not { } switches)
        {
            return NotHere();
        }

        Channel? ofChannel = ChannelOf(channel, setup);
        FaultKind? ofKind = kind is null ? null : WireNames.Parse<FaultKind>(kind, "kind");
        if (ofChannel is null && ofKind is null)
        {
            switches.Clear();
        }

        foreach (Fault fault in switches.Active.ToArray())
        {
            if ((ofChannel is null || fault.Channel == ofChannel) && (ofKind is null || fault.Kind == ofKind))
            {
                switches.Remove(fault);
            }
        }

        return TypedResults.Accepted((string?)null);
    }

    private static void Require(Fault fault, PanelSetup setup)
    {
        if (FaultRules.Find(fault) is not { } complaint)
        {
            return;
        }

        string[] taken = [.. setup.Rig.Probes
            .Where(probe => FaultRules.KindsOf(probe.Channel).Contains(fault.Kind))
            .Select(probe => ChannelTable.Of(probe.Channel).Name)];
        throw BodyFields.Fault(
            complaint.Field, complaint.Given, complaint.Field == "channel" && taken.Length > 0 ? $"one of {string.Join(", ", taken)}" : complaint.Allowed);
    }

    private static Channel? ChannelOf(string? name, PanelSetup setup)
    {
        if (name is null)
        {
            return null;
        }

        return ChannelTable.TryFind(name, out ChannelInfo info) && setup.Rig.Probes.Any(probe => probe.Channel == info.Channel)
            ? info.Channel
            : throw BodyFields.Fault("channel", name, $"one of {Fitted(setup)}");
    }

    private static string Fitted(PanelSetup setup) => string.Join(", ", setup.Rig.Probes.Select(probe => ChannelTable.Of(probe.Channel).Name));

    private static ProblemHttpResult NotHere() => Answers.Refused(
        StatusCodes.Status404NotFound, "No faults here", "Faults can be put into a simulated rig only; this rig is real.");
}
