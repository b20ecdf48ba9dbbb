using System.Device.Gpio;
using PileController.Rigs.Hardware;

namespace PileController.Rigs.Tests.Hardware;

public class GpioChipsTests
{
    private readonly List<GpioChipInfo> _opened = [];

    [Fact]
    public void Choose_LabelThere_OpensThatChipAndNoOther()
    {
        GpioLibrary library = Library("new", true, Chip(0, "expander", 16), Chip(4, "header", 54));
        using GpioDriver driver = GpioChips.Choose("header", [library]);

        Assert.Equal([4], _opened.Select(chip => chip.Id));
    }

    [Fact]
    public void Choose_FirstLibraryMissing_TakesTheNext()
    {
        GpioLibrary[] libraries = [Library("new", false, Chip(0, "header", 54)), Library("old", true, Chip(7, "header", 54))];
        using GpioDriver driver = GpioChips.Choose("header", libraries);

        Assert.Equal([7], _opened.Select(chip => chip.Id));
    }

    [Fact]
    public void Choose_BothInstalled_TakesTheNewerAndDoesNotFallBack()
    {
        GpioLibrary[] libraries = [Library("new", true), Library("old", true, Chip(7, "header", 54))];

        RigFaultException error = Assert.Throws<RigFaultException>(() => GpioChips.Choose("header", libraries));
        Assert.Contains("new finds no chip", error.Message, StringComparison.Ordinal);
        Assert.Empty(_opened);
    }

    [Fact]
    public void Choose_LabelNotThere_NamesWantedAndFound()
    {
        GpioLibrary library = Library("new", true, Chip(0, "expander", 16), Chip(1, "other", 8));

        RigFaultException error = Assert.Throws<RigFaultException>(() => GpioChips.Choose("header", [library]));
        Assert.Contains("\"header\"", error.Message, StringComparison.Ordinal);
        Assert.Contains("\"expander\" (16 lines), \"other\" (8 lines)", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Choose_LabelTwice_IsNotGuessed()
    {
        GpioLibrary library = Library("new", true, Chip(0, "header", 16), Chip(1, "header", 8));

        RigFaultException error = Assert.Throws<RigFaultException>(() => GpioChips.Choose("header", [library]));
        Assert.Contains("2 chips", error.Message, StringComparison.Ordinal);
        Assert.Empty(_opened);
    }

    [Fact]
    public void Choose_NoLibrary_NamesThoseLookedFor()
    {
        RigFaultException error = Assert.Throws<RigFaultException>(
            () => GpioChips.Choose("header", [Library("new", false), Library("old", false)]));
        Assert.Contains("new, old", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Choose_LibraryThatThrows_SaysWhatItSaid()
    {
        GpioLibrary blind = new("new", () => true, () => throw new IOException("no permission"), _ => new FakeGpioDriver());
        GpioLibrary shut = new("new", () => true, () => [Chip(0, "header", 8)], _ => throw new IOException("chip is busy"));

        Assert.Contains(
            "no permission", Assert.Throws<RigFaultException>(() => GpioChips.Choose("header", [blind])).Message, StringComparison.Ordinal);
        Assert.Contains(
            "chip is busy", Assert.Throws<RigFaultException>(() => GpioChips.Choose("header", [shut])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void All_Libraries_HaveTheNewerFirst() =>
        Assert.Equal(["libgpiod 2", "libgpiod 1"], GpioLibrary.All.Select(library => library.Name));

    private static GpioChipInfo Chip(int id, string label, int lines) => new(id, $"gpiochip{id}", label, lines);

    private GpioLibrary Library(string name, bool installed, params GpioChipInfo[] chips) => new(
        name,
        () => installed,
        () => chips,
        chip =>
        {
            _opened.Add(chip);
            return new FakeGpioDriver();
        });
}
