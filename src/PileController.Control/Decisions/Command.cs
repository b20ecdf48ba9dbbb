using System.Text.Json.Serialization;
using PileController.Control.Foresight;

namespace PileController.Control.Decisions;

/// <summary>Something a person asked for. It enters by a channel and takes effect at the next tick.</summary>
[JsonDerivedType(typeof(TakeByHand), "take")]
[JsonDerivedType(typeof(ReleaseHand), "release")]
[JsonDerivedType(typeof(ClearTrip), "clearTrip")]
[JsonDerivedType(typeof(SetServicing), "servicing")]
[JsonDerivedType(typeof(ReportTick), "report")]
[JsonDerivedType(typeof(TakeForecast), "forecast")]
public abstract record Command
{
    /// <summary>Who asked for it; null for what the program itself asks for.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public Asker? Asker { get; init; }
}

/// <summary>Take one actuator by hand until an end time. Interlocks still outrank it.</summary>
/// <param name="Actuator">Which actuator.</param>
/// <param name="Value">0 to 1.</param>
/// <param name="Milliseconds">How long, from the tick it takes effect; at most 24 hours.</param>
/// <param name="Who">The name the person gave, for the record.</param>
public sealed record TakeByHand(Actuator Actuator, double Value, long Milliseconds, string Who) : Command;

/// <summary>Give one actuator back to the controller; null gives all of them back.</summary>
/// <param name="Actuator">Which actuator, or null for all.</param>
public sealed record ReleaseHand(Actuator? Actuator) : Command;

/// <summary>Clear a latched trip. Refused while its cause stands.</summary>
/// <param name="Interlock">The interlock's id, as in the interlock table.</param>
public sealed record ClearTrip(string Interlock) : Command;

/// <summary>Lock all outputs off for work on the rig, or end that.</summary>
/// <param name="On">True locks the outputs off.</param>
public sealed record SetServicing(bool On) : Command;

/// <summary>What the shell has to say of itself: a store that fails, a clock that jumped, a tick that came late.</summary>
/// <param name="StoreFailing">The record does not accept ticks now.</param>
/// <param name="ClockJumpMilliseconds">Wall clock against monotonic clock since the tick before, 0 when they agree.</param>
/// <param name="LateMilliseconds">How late this tick began, 0 when on time.</param>
/// <param name="Restarts">At the first tick: how often the program was started within the hour without having been stopped.</param>
public sealed record ReportTick(bool StoreFailing, long ClockJumpMilliseconds, long LateMilliseconds, int Restarts = 0) : Command;

/// <summary>Take a forecast of the weather, in place of the one before.</summary>
/// <param name="Forecast">The forecast; refused with a note when it is not sound.</param>
public sealed record TakeForecast(Forecast Forecast) : Command;
