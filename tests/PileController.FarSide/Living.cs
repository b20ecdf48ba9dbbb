using PileController.FarSide.Kernel;
using PileController.FarSide.Plants;

namespace PileController.FarSide;

/// <summary>Lets the plant live in the time of the clock: looks at the outputs, shows probes and pulses.</summary>
internal sealed class Living(FarPlant plant, KernelLines lines, FarOptions options, TimeProvider time, TextWriter? told)
{
    // Closer edges are lost: the simulated chip tells of them at the kernel's next tick.
    private const int LeastEdgeMilliseconds = 3;

    // A look that comes late is lived through in parts.
    private const double LongestSeconds = 10;

    private const long ShowMilliseconds = 500;
    private const long TellMilliseconds = 60_000;

    private readonly long _began = time.GetTimestamp();
    private long _lived;
    private long _edgeAt = -LeastEdgeMilliseconds;

    private long Now => (long)time.GetElapsedTime(_began).TotalMilliseconds;

    /// <summary>
    /// Lives until it is told to end. On one thread that sleeps between looks and edges: threads of a pool would spin at each
    /// of them, which costs more than all else here.
    /// </summary>
    public void Run(CancellationToken cancellation)
    {
        Pace pace = new(options.LookMilliseconds);
        Pace show = new((int)ShowMilliseconds);
        Pace tell = new((int)TellMilliseconds);
        LinesSeen seen = LinesSeen.Off;
        lines.Show(plant);
        for (long now = Now; !cancellation.IsCancellationRequested; now = Now)
        {
            Live(seen, now);
            if (plant.Wheel.IsDue && now - _edgeAt >= LeastEdgeMilliseconds)
            {
                _edgeAt = now;
                lines.Turn(plant.Wheel.Give());
            }

            if (pace.TakeLook(now))
            {
                seen = lines.See();
            }

            if (show.TakeLook(now))
            {
                lines.Show(plant);
            }

            if (told is not null && tell.TakeLook(now))
            {
                told.WriteLine(PlantTold.Line(plant, time.GetTimestamp() / (time.TimestampFrequency / 1000)));
                told.Flush();
            }

            Thread.Sleep(pace.Wait(now, plant.Wheel.SecondsToEdge, (int)Math.Max(0, _edgeAt + LeastEdgeMilliseconds - now)));
        }
    }

    // By whole milliseconds, so that none is lost between the calls.
    private void Live(in LinesSeen seen, long until)
    {
        while (_lived < until)
        {
            long part = Math.Min(until - _lived, (long)(LongestSeconds * 1000));
            plant.Live(seen, part / 1000.0);
            _lived += part;
        }
    }
}
