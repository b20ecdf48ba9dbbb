using PileController.Plans.Ahead;
using PileController.Plans.Money;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "plan" with "spreads", "prices", "parts" and "wish".</summary>
internal static class PlanFields
{
    /// <summary>What a part starts as before its name is read.</summary>
    private static readonly PlanPart BlankPart = new("");

    private static readonly FieldTable<Spreads> SpreadTable = new()
    {
        { "fast", Share(0, 1), s => s.Fast, (s, v) => s with { Fast = v }, "Of the share that burns fast, relative (common practice, no source)." },
        { "slow", Share(0, 1), s => s.Slow, (s, v) => s with { Slow = v }, "Of the share that burns slowly, relative (common practice, no source)." },
        { "moisture", Share(0, 0.2), s => s.Moisture, (s, v) => s with { Moisture = v }, "Of the heap's moisture, of its wet mass (preferred band 50 to 60 %, Manitoba Agriculture)." },
        { "mass", Share(0, 0.5), s => s.Mass, (s, v) => s with { Mass = v }, "Of the heap's mass, relative (green hardwood chips weigh 250 to 350 kg/m3)." },
        { "permeability", Number(0, 2, "in the natural logarithm"), s => s.Permeability, (s, v) => s with { Permeability = v }, "Of the permeability to air; 0.7 is a factor of two (common practice, no source)." },
        { "cover", Share(0, 1), s => s.Cover, (s, v) => s with { Cover = v }, "Of the resistance of the dry blanket, relative (0.03 to 0.30 W/mK, Ahn, Sauer, Richard, Glanville 2009)." },
        { "ground", Kelvin(0, 5), s => s.GroundKelvin, (s, v) => s with { GroundKelvin = v }, "Of the deep ground (common practice, no source)." },
        { "airChanges", Share(0, 1), s => s.AirChanges, (s, v) => s with { AirChanges = v }, "Of the air changes of the house, relative (common practice, no source)." },
        { "winter", Kelvin(0, 5), s => s.WinterKelvin, (s, v) => s with { WinterKelvin = v }, "Of the whole winter's air outside against the one recorded (common practice, no source)." },
    };

    private static readonly FieldTable<Prices> PriceTable = new()
    {
        { "money", Text("a sign or name of 1 to 10 letters", t => t.Trim().Length is > 0 and <= 10), p => p.Money, (p, v) => p with { Money = v! }, "Name or sign of the money." },
        { "replaced", WordOf<ReplacedFuel>(), p => p.Replaced, (p, v) => p with { Replaced = v }, "Fuel that heats the house where the heap does not; the payback is reckoned against it." },
        { "propane", Number(0, 1000, "a US gallon"), p => p.PropanePerGallon, (p, v) => p with { PropanePerGallon = v }, "Price of propane." },
        { "oil", Number(0, 1000, "a US gallon"), p => p.OilPerGallon, (p, v) => p with { OilPerGallon = v }, "Price of heating oil." },
        { "electricity", Number(0, 100, "a kWh"), p => p.ElectricityPerKWh, (p, v) => p with { ElectricityPerKWh = v }, "Price of electricity; pump and blower pay it too." },
        { "cordwood", Number(0, 100_000, "a cord"), p => p.CordwoodPerCord, (p, v) => p with { CordwoodPerCord = v }, "Price of firewood." },
        { "chips", Number(0, 1_000_000, "a heap"), p => p.ChipsPerHeap, (p, v) => p with { ChipsPerHeap = v }, "Price of chips and greens for one heap, delivered; paid every season." },
    };

    private static readonly FieldTable<PlanPart> PartTable = new()
    {
        { "name", Text("a name of 1 to 60 letters", t => t.Trim().Length is > 0 and <= 60), p => p.Name, (p, v) => p with { Name = v! }, "What it is.", true },
        { "price", Number(0, 1_000_000, "in your money"), p => p.Price, (p, v) => p with { Price = v }, "What it cost; for a reused part what a new one would have cost." },
        { "source", Word(("bought", false), ("reused", true)), p => p.Reused, (p, v) => p with { Reused = v }, "Whether it was bought or was at hand." },
    };

    private static readonly FieldTable<PlanWish> WishTable = new()
    {
        { "flow", LitresPerMinute(0, 1000), w => w.FlowLitresPerMinute, (w, v) => w with { FlowLitresPerMinute = v }, "Flow of hot water that is wished for all winter, 0 L/min for no wish." },
        { "from", Celsius(0, 95), w => w.FromC, (w, v) => w with { FromC = v }, "Temperature of the water as it comes." },
        { "to", Celsius(0, 95), w => w.ToC, (w, v) => w with { ToC = v }, "Temperature it is to have." },
    };

    public static readonly FieldTable<PlanSettings> Table = new()
    {
        { "spreads", SpreadTable, p => p.Spreads, (p, v) => p with { Spreads = v }, "Standard deviations of what is drawn for each season ahead." },
        { "prices", PriceTable, p => p.Prices, (p, v) => p with { Prices = v }, "What you pay; these are made up for the demo." },
        { "parts", PartTable, BlankPart, _ => BlankPart, p => p.Parts, (p, v) => p with { Parts = v }, "The parts of the holding and where they came from." },
        { "wish", WishTable, p => p.Wish, (p, v) => p with { Wish = v }, "Hot water that is wished for, to be judged against what the heap holds." },
    };
}
