using System.Security.Cryptography;
using System.Text;
using PileController.Settings.Fields;
using PileController.Settings.Tables;

namespace PileController.Settings;

/// <summary>Writes settings: for machines in one line, for people with every key explained.</summary>
internal static class SettingsWriter
{
    /// <summary>One line with every field, in the order of the table.</summary>
    public static string Write(PileSettings settings) => JsonText.Of(w => PileFields.Table.Write(w, settings));

    /// <summary>
    /// SHA-256 of that line, lower-case hex, without the keys that came later and say what they say when left out: what an
    /// earlier build kept under its fingerprint is found under the same.
    /// </summary>
    public static string Fingerprint(PileSettings settings) => Convert.ToHexStringLower(SHA256.HashData(
        Encoding.UTF8.GetBytes(JsonText.Of(w => PileFields.Table.WriteMark(w, settings, PileSettings.AlderBank)))));

    /// <summary>A file that says the same, with what each key means and may be.</summary>
    public static string Explain(PileSettings settings) => PartFile.Explain(
        "Settings of one holding. Keys left out take these values. Every quantity is written with its unit.", PileFields.Table, settings);
}
