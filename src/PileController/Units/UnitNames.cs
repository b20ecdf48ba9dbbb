using System.Text;

namespace PileController.Units;

/// <summary>Finds units by how people write them.</summary>
internal static class UnitNames
{
    private static readonly ILookup<string, Unit> Exact = Spellings(StringComparer.Ordinal);
    private static readonly ILookup<string, Unit> AnyCase = Spellings(StringComparer.OrdinalIgnoreCase);

    /// <summary>All units that <paramref name="written"/> may mean; exact letters win over other case.</summary>
    public static IReadOnlyList<Unit> Find(string written)
    {
        string key = Plain(written);
        Unit[] exact = [.. Exact[key]];
        return exact.Length > 0 ? exact : [.. AnyCase[key].Where(u => !MixesMilliAndMega(key, Plain(u.Symbol)))];
    }

    /// <summary>The known symbol nearest to <paramref name="written"/>, of <paramref name="expected"/> if any is near.</summary>
    public static string? NearestTo(string written, Dimension expected)
    {
        Unit[] ofExpected = [.. UnitTable.All.Where(u => u.Dimension == expected)];
        return Nearest.Of(Plain(written), ofExpected, u => Plain(u.Symbol))?.Symbol
            ?? Nearest.Of(Plain(written), UnitTable.All, u => Plain(u.Symbol))?.Symbol;
    }

    /// <summary>"mJ" is not "MJ": where the case of the first letter is a factor of a milliard, it is not forgiven.</summary>
    private static bool MixesMilliAndMega(string given, string symbol) =>
        given.Length > 1 && symbol.Length > 1 && given[0] != symbol[0]
        && given[0] is 'm' or 'M' && symbol[0] is 'm' or 'M' && char.IsUpper(symbol[1]);

    /// <summary>Drops what people write in many ways: spaces, brackets, dots, degree marks, raised digits.</summary>
    private static string Plain(string written)
    {
        StringBuilder plain = new(written.Length);
        foreach (char c in written.Replace("deg", "", StringComparison.OrdinalIgnoreCase))
        {
            _ = c switch
            {
                '²' => plain.Append('2'),
                '³' => plain.Append('3'),
                ' ' or '\u00a0' or '\u202f' or '(' or ')' or '·' or '⋅' or '.' or '*' or '^' or '°' or 'º' => plain,
                _ => plain.Append(c),
            };
        }

        return plain.ToString();
    }

    private static ILookup<string, Unit> Spellings(StringComparer comparer) => UnitTable.All
        .SelectMany(u => u.OtherSpellings.Append(u.Symbol).Select(s => (Key: Plain(s), Unit: u)))
        .ToLookup(p => p.Key, p => p.Unit, comparer);
}
