namespace PileController.Benchmarks.Bounds;

/// <summary>
/// How the active zone at an hour answers heat drawn so many hours before it, K/J: at once hardly at all, since the bed at
/// the pipe pays first, fully a day later, and then ever less.
/// </summary>
/// <param name="Hour">The hour.</param>
/// <param name="Coil">By hours before it, for heat from the bed at the pipe.</param>
/// <param name="Drum">For heat from the drum.</param>
/// <param name="Duct">For heat from the shell of the ducts.</param>
internal sealed record Answer(int Hour, double[] Coil, double[] Drum, double[] Duct);
