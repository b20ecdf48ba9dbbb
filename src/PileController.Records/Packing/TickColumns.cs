using PileController.Control.Readings;

namespace PileController.Records.Packing;

/// <summary>
/// The columns of a packed batch, in order. All cells are whole numbers: readings in their channel's quanta,
/// decision figures in the quantum of their series. The order is the file format: new columns go to the
/// end, and those at the end that hold nothing but noughts are not written.
/// </summary>
internal static class TickColumns
{
    public const int Utc = 0;
    public const int Monotonic = 1;
    public const int Offset = 2;

    /// <summary>Digest of the whole decision, stored as eight plain bytes a row.</summary>
    public const int Digest = 3;

    public const int Kinds = 4;
    public const int Mode = 5;

    /// <summary>First of the rounded decision figures, in the order of <see cref="Queries.DecisionSeries"/>.</summary>
    public const int FirstFigure = 6;

    public const int Figures = 12;

    public const int FirstChannel = FirstFigure + Figures;

    /// <summary>Columns a channel: the five below.</summary>
    public const int PerChannel = 5;

    public const int RawQuanta = 0;
    public const int RawQuality = 1;
    public const int RawAge = 2;

    /// <summary>Quality after validation.</summary>
    public const int Quality = 3;

    /// <summary>Quanta after validation minus raw quanta: nothing but noughts unless validation moved the value.</summary>
    public const int QuantaShift = 4;

    public const int Count = FirstChannel + (PerChannel * ChannelTable.Count);

    /// <summary>The cell of a figure that is no number, or too large to be shown as a whole number of quanta.</summary>
    public const long NoFigure = long.MinValue;

    /// <summary>Largest size of a figure's cell. A day's sum of such cells still fits 64 bits.</summary>
    public const long MostFigure = 1_000_000_000_000_000;

    /// <summary>The column of one part of one channel.</summary>
    public static int Of(Channel channel, int part) => FirstChannel + (PerChannel * (int)channel) + part;

    /// <summary>How often a column is differenced: evenly spaced times vanish at the second difference.</summary>
    public static int DifferencesOf(int column) => column is Utc or Monotonic ? 2 : 1;
}
