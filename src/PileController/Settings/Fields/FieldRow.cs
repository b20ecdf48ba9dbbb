namespace PileController.Settings.Fields;

/// <summary>One row of the table of all settings.</summary>
/// <param name="Path">Where it stands: "heap.coil.length"; "[]" marks the items of a list.</param>
/// <param name="Allowed">What is allowed.</param>
/// <param name="Doc">What it means.</param>
internal sealed record FieldRow(string Path, string Allowed, string Doc);
