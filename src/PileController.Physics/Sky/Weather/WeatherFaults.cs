namespace PileController.Physics.Sky.Weather;

/// <summary>Faults of one file, gathered so that all are told at once.</summary>
internal sealed class WeatherFaults(string fileName)
{
    private const int MostTold = 20;

    private readonly List<string> _faults = [];

    public void Cell(int line, string column, string value, string allowed) =>
        _faults.Add($"{fileName}, line {line}, {column}: \"{value}\"; allowed is {allowed}.");

    public void File(string sentence) => _faults.Add($"{fileName}: {sentence}");

    public void ThrowIfAny()
    {
        if (_faults.Count == 0)
        {
            return;
        }

        int untold = _faults.Count - MostTold;
        throw new WeatherFileException(untold > 0 ? [.. _faults.Take(MostTold), $"{fileName}: {untold} more faults."] : _faults);
    }
}
