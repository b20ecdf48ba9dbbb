using System.Text.Json;
using PileController.Settings;
using PileController.Settings.Fields;
using PileController.Settings.Tables;

namespace PileController.Tests.Settings;

public class AlderBankTests
{
    private static readonly JsonDocumentOptions Lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    [Fact]
    public void AlderBank_TheShippedFile_SaysWhatTheDefaultsSay()
    {
        SettingsResult result = SettingsFile.Parse(DemoFile.Text);

        Assert.Empty(result.Faults);
        foreach (Field<PileSettings> field in PileFields.Table)
        {
            Assert.Equal(
                JsonText.Of(w => field.Write(w, PileSettings.AlderBank)), JsonText.Of(w => field.Write(w, result.Settings)));
        }

        // To write the file anew after a default has changed: PileController check --defaults > src/PileController/Demo/alder-bank.json
        Assert.Equal(SettingsFile.Explain(PileSettings.AlderBank), DemoFile.Text);
    }

    [Fact]
    public void AlderBank_TheShippedFile_NamesEveryField()
    {
        using JsonDocument document = JsonDocument.Parse(DemoFile.Text, Lenient);
        foreach (FieldRow row in PileFields.Table.Rows("").Where(r => !r.Path.Contains("[]", StringComparison.Ordinal)))
        {
            JsonElement at = document.RootElement;
            Assert.All(row.Path.Split('.'), key => Assert.True(at.TryGetProperty(key, out at), row.Path));
        }
    }

    [Fact]
    public void AlderBank_TheEmbeddedFile_IsTheShippedOne()
    {
        using Stream stream = typeof(PileSettings).Assembly.GetManifestResourceStream("alder-bank.json")!;
        using StreamReader reader = new(stream);
        Assert.Equal(DemoFile.Text, reader.ReadToEnd());
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("// nothing but a comment\n{ /* here too */ }")]
    [InlineData("{ \"heap\": { \"height\": \"200 cm\", \"moisture\": \"55 %\" }, \"control\": { \"floor\": \"113 °F\", \"lookAhead\": \"2 d\" } }")]
    [InlineData("\ufeff{ \"site\": { \"name\": \"Alder Bank\", }, }")]
    public void AlderBank_AFileThatSaysNothingElse_IsTheDefaults(string text)
    {
        SettingsResult result = SettingsFile.Parse(text);
        Assert.Empty(result.Faults);
        Assert.Equal(PileSettings.AlderBank.CanonicalJson(), result.Settings.CanonicalJson());
    }
}
