using Microsoft.AspNetCore.Http.Features;

namespace PileController.Panel.Guard;

/// <summary>What is known of a request while it is handled, for those who answer it and for the journal.</summary>
/// <param name="caller">Who makes it.</param>
internal sealed class Told(Caller caller)
{
    /// <summary>Who makes it.</summary>
    public Caller Caller { get; set; } = caller;

    /// <summary>The name given with the change, where it has one.</summary>
    public string? Who { get; set; }

    /// <summary>Why it was refused.</summary>
    public string? Why { get; set; }

    /// <summary>What is known of a request.</summary>
    public static Told Of(HttpContext context) => context.Features.GetRequiredFeature<Told>();
}
