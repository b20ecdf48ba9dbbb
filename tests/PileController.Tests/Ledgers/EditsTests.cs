using PileController.Ledgers;
using PileController.Ledgers.Editing;
using PileController.Plans.Money;

namespace PileController.Tests.Ledgers;

public class EditsTests
{
    private static readonly DateOnly Today = new(2026, 11, 20);

    [Fact]
    public void Season_OpenedAmendedAndClosed_IsAsItWasSaid()
    {
        Book opened = SeasonEdits.Open(SampleBook.Two(), "Winter 2026", new DateOnly(2026, 11, 2), Today, SampleBook.Propane);
        Book amended = SeasonEdits.Change(opened, "Third", new DateOnly(2026, 11, 3), Today, fuel => fuel with { PricePerUnit = 3 });
        Book closed = SeasonEdits.Close(amended, Today, Today, SampleBook.Jo, season => SampleBook.Taught);

        Assert.Equal(("Third", new DateOnly(2026, 11, 3), 3.0), (amended.Open!.Name, amended.Open.HeapBuiltOn, amended.Open.Fuel.PricePerUnit));
        Assert.Null(closed.Open);
        Assert.Equal(new Closing(Today, SampleBook.Jo, SampleBook.Taught), closed.Seasons[2].Closed);
        Assert.Equal(SampleBook.Two().Seasons[1].Closed, closed.Seasons[1].Closed);
    }

    [Theory]
    [InlineData("winter 2024", "2026-11-02", "has it already")]
    [InlineData("Winter 2026", "2026-04-12", "after 2026-04-12")]
    [InlineData("Winter 2026", "2026-11-21", "not after 2026-11-20")]
    public void Open_WithWhatDoesNotFit_SaysWhatIsAllowed(string name, string built, string says)
    {
        LedgerRefusedException refused = Assert.Throws<LedgerRefusedException>(() => SeasonEdits.Open(
            SampleBook.Two(), name, DateOnly.Parse(built, System.Globalization.CultureInfo.InvariantCulture), Today, SampleBook.Propane));

        Assert.Contains(says, refused.Message, StringComparison.Ordinal);
        Assert.Contains("Allowed", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_WhileOneIsOpenAndCloseWhileNoneIs_AreRefused()
    {
        Assert.Throws<LedgerRefusedException>(() => SeasonEdits.Open(SampleBook.Two(closed: false), "x", Today, Today, SampleBook.Propane));
        Assert.Throws<LedgerRefusedException>(() => SeasonEdits.Close(SampleBook.Two(), Today, Today, SampleBook.Jo, _ => null));
        Assert.Throws<LedgerRefusedException>(() => SeasonEdits.Close(SampleBook.Two(closed: false), Today.AddDays(1), Today, SampleBook.Jo, _ => null));
        Assert.Throws<LedgerRefusedException>(() => SeasonEdits.Close(
            SampleBook.Two(closed: false), new DateOnly(2025, 10, 31), Today, SampleBook.Jo, _ => null));
    }

    [Fact]
    public void Part_OfANameThatIsThere_TakesItsPlaceAndNoneTakesItOut()
    {
        Book changed = EntryEdits.Part(SampleBook.Two(), null, new PartEntry("Circulating pump", 3, 50, true, SampleBook.Jo));
        Book without = EntryEdits.Part(changed, null, new PartEntry("circulating pump", 0, 0, false, SampleBook.Jo));

        Assert.Equal([("Circulating pump", 150.0, true), ("steel drum", 90, true)], changed.Seasons[1].Parts.Select(p => (p.Name, p.Price, p.Reused)));
        Assert.Equal(["steel drum"], without.Seasons[1].Parts.Select(p => p.Name));
        Assert.Equal(2, without.Seasons[0].Parts.Count);
    }

    [Fact]
    public void Mass_EnteredAgain_CountsAndTheFirstStays()
    {
        Book changed = EntryEdits.Mass(SampleBook.Two(), "winter 2024", new MassEntry(MassWay.In, 8200, Known.Measured, "weighbridge", SampleBook.Jo));

        Assert.Equal(8200, changed.Seasons[0].Mass(MassWay.In)!.Kilograms);
        Assert.Equal(2, changed.Seasons[0].Masses.Count);
        Assert.Equal(9000, changed.Seasons[1].Mass(MassWay.In)!.Kilograms);
        Assert.Null(changed.Seasons[0].Mass(MassWay.Out));
    }

    [Fact]
    public void Entry_OfASeasonThatIsNotThere_NamesThoseThatAre()
    {
        Assert.Contains("open one first", Assert.Throws<LedgerRefusedException>(() => EntryEdits.Find(Book.Empty, null)).Message, StringComparison.Ordinal);
        Assert.Contains(
            "Winter 2024, Winter 2025", Assert.Throws<LedgerRefusedException>(() => EntryEdits.Find(SampleBook.Two(), "Winter 1900")).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Fuel_ChangedByName_HasItsPriceFromTheSettingsOrIsRefused()
    {
        Prices prices = new() { OilPerGallon = 4.1 };
        Hand other = SampleBook.Jo with { Who = "Ann" };

        FuelEntry oil = LedgerFuel.Changed(SampleBook.Propane, "heating oil", prices, double.NaN, 0, null, other);

        Assert.Equal(new FuelEntry("heating oil", 4.1, 0, "$", other), oil);
        Assert.Same(SampleBook.Propane, LedgerFuel.Changed(SampleBook.Propane, null, prices, double.NaN, double.NaN, null, other));
        Assert.Throws<LedgerRefusedException>(() => LedgerFuel.Changed(SampleBook.Propane, "natural gas", prices, double.NaN, 0, null, other));
    }
}
