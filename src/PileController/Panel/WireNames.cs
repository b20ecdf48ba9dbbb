using System.Text.Json;
using PileController.Panel.Commands;

namespace PileController.Panel;

/// <summary>Names of enumerated values on the wire: camelCase, one set of words for asking and answering.</summary>
internal static class WireNames
{
    /// <summary>The name of a value.</summary>
    public static string Of<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());

    /// <summary>All names, with commas.</summary>
    public static string List<T>()
        where T : struct, Enum => string.Join(", ", Enum.GetValues<T>().Select(Of));

    /// <summary>The value of a name.</summary>
    /// <exception cref="FieldFaultException">No such name.</exception>
    public static T Parse<T>(string name, string field)
        where T : struct, Enum
    {
        foreach (T value in Enum.GetValues<T>())
        {
            if (string.Equals(Of(value), name, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        throw BodyFields.Fault(field, name, List<T>());
    }

    /// <summary>The names of the flags that are set.</summary>
    public static string[] Flags<T>(T value)
        where T : struct, Enum =>
        [.. Enum.GetValues<T>().Where(flag => Convert.ToInt64(flag) != 0 && value.HasFlag(flag)).Select(Of)];
}
