using PileController.FarSide;
using PileController.FarSide.Kernel;
using PileController.FarSide.Plants;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;

// The plant on the far side of a real rig's wires: a process of its own that sees the controller's outputs at the kernel's
// files and answers through the probes and the flow meter, nothing else.
try
{
    FarOptions options = FarOptions.Parse(args);
    PlantState state = KeptPlant.Read(File.ReadAllText(options.Holding));
    WeatherSeries weather = Weather(options, state);
    FarPlant plant = new(state, weather, options.Probes, options.PulsesPerLitre, options.Valve is null ? 0 : options.TravelSeconds);
    KernelLines lines = new(options, Places.Trial);

    using CancellationTokenSource end = new();
    Console.CancelKeyPress += (_, told) =>
    {
        told.Cancel = true;
        end.Cancel();
    };
    using StreamWriter? told = options.Told is { } file ? new StreamWriter(file) : null;
    told?.WriteLine(PlantTold.Head);
    new Living(plant, lines, options, TimeProvider.System, told).Run(end.Token);
    return 0;
}
catch (Exception error) when (error is ArgumentException or IOException or InvalidDataException or WeatherFileException)
{
    Console.Error.WriteLine(error.Message);
    return 2;
}

static WeatherSeries Weather(FarOptions options, PlantState state)
{
    if (options.Weather is { } file)
    {
        using StreamReader text = new(file);
        return WeatherFile.Read(text, file, ColdNights.Place);
    }

    const int ElevenDays = 264;
    return ColdNights.Of(DateTimeOffset.FromUnixTimeMilliseconds(state.UtcMilliseconds), ElevenDays, options.NightC, options.DayC);
}
