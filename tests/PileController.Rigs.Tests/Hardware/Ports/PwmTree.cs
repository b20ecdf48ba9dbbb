using System.Globalization;
using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Tests.Hardware.Ports;

/// <summary>
/// A folder that looks like the kernel's PWM class, and one channel's rules behind it: a channel without a period takes neither
/// duty nor polarity nor enable, a duty is at most its period, a polarity is taken only of a disabled channel.
/// </summary>
internal sealed class PwmTree : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("pwm-").FullName;
    private readonly Dictionary<string, long> _values = [];
    private readonly Dictionary<string, string> _polarities = [];

    public PwmTree() => Directory.CreateDirectory(Class);

    public PwmFiles Files => new(Class, Read, Write, () => Pauses++);

    public int Pauses { get; private set; }

    /// <summary>How many more writes are refused, as before the user has got its right to them.</summary>
    public int Refusals { get; set; }

    public bool Disobeys { get; set; }

    /// <summary>What the one watched channel has put out, in order, without repeats.</summary>
    public List<double> Seen { get; } = [];

    public string Watched { get; set; } = "";

    private string Class => Path.Combine(_root, "class", "pwm");

    /// <summary>Adds a chip of a device.</summary>
    public void Add(int number, string device, int channels)
    {
        string folder = Path.Combine(_root, "devices", device, "pwm", $"pwmchip{number}");
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "npwm"), $"{channels}\n");
        File.CreateSymbolicLink(Path.Combine(folder, "device"), Path.Combine("..", "..", "..", Path.GetFileName(device)));
        File.CreateSymbolicLink(Path.Combine(Class, $"pwmchip{number}"), Path.GetRelativePath(Class, folder));
    }

    /// <summary>What a channel puts out now, 0 to 1.</summary>
    public double Share(string channel) =>
        Value(channel, "enable") == 1 && Value(channel, "period") > 0
            ? Math.Abs((Polarity(channel) == "normal" ? 0 : 1) - ((double)Value(channel, "duty_cycle") / Value(channel, "period")))
            : 0;

    /// <summary>Sets a channel as another program may have left it.</summary>
    public void Leave(string channel, long period, long duty, long enable, string polarity = "normal")
    {
        Directory.CreateDirectory(channel);
        (_values[$"{channel}/period"], _values[$"{channel}/duty_cycle"], _values[$"{channel}/enable"]) = (period, duty, enable);
        _polarities[channel] = polarity;
    }

    public string ChannelOf(int number, string device, int channel) =>
        Path.Combine(_root, "devices", device, "pwm", $"pwmchip{number}", $"pwm{channel}");

    public string Polarity(string channel) => _polarities.GetValueOrDefault(channel, "normal");

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private string Read(string path)
    {
        if (Path.GetFileName(path) == "npwm")
        {
            return File.ReadAllText(path);
        }

        (string channel, string file) = (Path.GetDirectoryName(path)!, Path.GetFileName(path));
        return Directory.Exists(channel)
            ? file == "polarity" ? $"{Polarity(channel)}\n" : $"{Value(channel, file)}\n"
            : throw new DirectoryNotFoundException(path);
    }

    private void Write(string path, string text)
    {
        (string channel, string file) = (Path.GetDirectoryName(path)!, Path.GetFileName(path));
        if (file == "export")
        {
            Directory.CreateDirectory(Path.Combine(channel, $"pwm{text}"));
            return;
        }

        if (Refusals > 0)
        {
            Refusals--;
            throw new UnauthorizedAccessException(path);
        }

        Refuse(channel, file, text);
        if (!Disobeys)
        {
            Take(channel, file, text);
        }

        if (channel == Watched && (Seen.Count == 0 || Seen[^1] != Share(channel)))
        {
            Seen.Add(Share(channel));
        }
    }

    private void Take(string channel, string file, string text)
    {
        if (file == "polarity")
        {
            _polarities[channel] = text;
        }
        else
        {
            _values[$"{channel}/{file}"] = long.Parse(text, CultureInfo.InvariantCulture);
        }
    }

    private void Refuse(string channel, string file, string text)
    {
        long period = Value(channel, "period");
        bool refused = file switch
        {
            "period" => long.Parse(text, CultureInfo.InvariantCulture) < Math.Max(1, Value(channel, "duty_cycle")),
            "duty_cycle" => period == 0 || long.Parse(text, CultureInfo.InvariantCulture) > period,
            "enable" => period == 0 && text == "1",
            _ => period == 0 || Value(channel, "enable") == 1,
        };
        if (refused)
        {
            throw new IOException($"Invalid argument : '{path(channel, file)}'");
        }

        static string path(string channel, string file) => $"{channel}/{file}";
    }

    private long Value(string channel, string file) => _values.GetValueOrDefault($"{channel}/{file}");
}
