using PileController.Physics.Heaps;

namespace PileController.Benchmarks.Published;

/// <summary>A heap that was reported on, as far as the report says how it was built; the rest is assumed and said.</summary>
/// <param name="Name">What it was.</param>
/// <param name="Source">Where it was reported.</param>
/// <param name="Assumed">What the report leaves open and is assumed here.</param>
/// <param name="Build">The heap as built.</param>
/// <param name="Draw">How it was drawn on.</param>
/// <param name="Weather">Record it is put into; the reports' own weather is not at hand.</param>
/// <param name="Start">Day on which it is built.</param>
/// <param name="Days">How long it is followed.</param>
/// <param name="Reports">What was reported.</param>
internal sealed record PublishedHeap(
    string Name, string Source, string Assumed, HeapBuild Build, PublishedDraw Draw, string Weather, DateOnly Start, int Days,
    IReadOnlyList<PublishedReport> Reports);

/// <summary>How a heap was drawn on.</summary>
/// <param name="FlowLitresPerMinute">Flow while it runs, 0 for none.</param>
/// <param name="HoursPerDay">Hours a day it runs.</param>
/// <param name="InletC">Water as it comes, °C, lowest and highest: drawn evenly between.</param>
/// <param name="FromDay">Day on which the draw begins.</param>
internal readonly record struct PublishedDraw(
    double FlowLitresPerMinute, double HoursPerDay, (double Low, double High) InletC, int FromDay);

/// <summary>One thing that was reported, beside what the model says of it.</summary>
/// <param name="Id">Row of the reference it was taken from.</param>
/// <param name="What">What was reported.</param>
/// <param name="Unit">In which unit.</param>
/// <param name="Low">Least reported.</param>
/// <param name="High">Most reported.</param>
/// <param name="Computed">The same of a run; null where it never came to it.</param>
internal sealed record PublishedReport(
    string Id, string What, string Unit, double Low, double High, Func<PublishedRun, double?> Computed);
