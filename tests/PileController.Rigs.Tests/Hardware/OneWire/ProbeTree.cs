namespace PileController.Rigs.Tests.Hardware.OneWire;

/// <summary>A folder of probe files as the kernel lays them out, in a place of its own.</summary>
internal sealed class ProbeTree : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("probes-");

    public string Root => Path.Combine(_folder.FullName, "devices");

    public static string Address(int number) => $"28-{number:x12}";

    public void Write(int number, string text)
    {
        string folder = Path.Combine(Root, Address(number));
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "w1_slave"), text);
    }

    public void Write(int number, double celsius) => Write(number, ProbeBytes.Text(celsius));

    /// <summary>Lays a probe under a master of its own and links it, as the kernel does.</summary>
    public void WriteLinked(int number, string master, double celsius)
    {
        string real = Path.Combine(_folder.FullName, master, Address(number));
        Directory.CreateDirectory(real);
        Directory.CreateDirectory(Root);
        File.WriteAllText(Path.Combine(real, "w1_slave"), ProbeBytes.Text(celsius));
        Directory.CreateSymbolicLink(Path.Combine(Root, Address(number)), real);
    }

    /// <summary>Lays the file by which a master converts all its probes at once.</summary>
    public void OfferBulk(string master) => File.WriteAllText(Path.Combine(_folder.FullName, master, "therm_bulk_read"), "0\n");

    public void Remove(int number) => Directory.Delete(Path.Combine(Root, Address(number)), recursive: true);

    public void Dispose() => _folder.Delete(recursive: true);
}
