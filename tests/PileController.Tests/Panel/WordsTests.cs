using System.Text.RegularExpressions;
using PileController.Panel.Assets;

namespace PileController.Tests.Panel;

/// <summary>Every text that a person reads stands in one folder, so that it can be read and translated there.</summary>
public partial class WordsTests
{
    private const string Folder = "/js/words/";

    // The rig's view, its commissioning and their words follow.
    private static readonly string[] Excepted = ["/js/words.js", "/js/views/rig.js", "/js/views/commission.js", "/js/rig/"];

    private static readonly PanelAssets Assets = new();

    private static readonly HashSet<string> Classes =
        [.. Assets.Paths.Where(path => path.EndsWith(".css", StringComparison.Ordinal)).SelectMany(path => ClassName().Matches(TextOf(path))).Select(name => name.Groups["name"].Value)];

    [Fact]
    public void Script_OutsideOfTheWords_HoldsNoText()
    {
        string[] left =
        [
            .. Scripts()
                .Where(path => !path.StartsWith(Folder, StringComparison.Ordinal) && !Excepted.Any(one => path.StartsWith(one, StringComparison.Ordinal)))
                .SelectMany(path => ScriptLiterals.Of(TextOf(path)).Where(IsText).Select(one => $"{path}: {one.Text}")),
        ];

        Assert.Empty(left);
    }

    // Once it has none left, this test and the exceptions go.
    [Fact]
    public void Script_OfTheRig_StillHoldsText() =>
        Assert.Contains("What the actuators are told", ScriptLiterals.Of(TextOf("/js/views/rig.js")).Where(IsText).Select(one => one.Text));

    [Fact]
    public void Words_AnyFile_NeedsNoOther()
    {
        string[] files = [.. Scripts().Where(path => path.StartsWith(Folder, StringComparison.Ordinal))];

        Assert.Contains(Folder + "frame.js", files);
        Assert.All(files, path => Assert.DoesNotMatch(ReachesOut(), TextOf(path)));
    }

    [Theory]
    [InlineData("""h("p", {}, "drum")""", "drum")]
    [InlineData("""h("p", {}, wet ? "wet" : say.dry)""", "wet")]
    [InlineData("""h("p", {}, (wet ? "wet" : say.dry))""", "wet")]
    [InlineData("""put(node, "off");""", "off")]
    [InlineData("""put(node, `${figure} left`);""", "# left")]
    [InlineData("""h("nav", { "aria-label": "views" })""", "views")]
    [InlineData("""mark(node, "title", "views");""", "views")]
    [InlineData("""const name = "Heap";""", "Heap")]
    [InlineData("""const name = `Heap ${size}`;""", "Heap #")]
    [InlineData("""const name = a ? `${b ? `not at all` : ""}x` : "";""", "not at all")]
    [InlineData("""const fits = /"[^"]+"/.test(x) ? "it fits" : "";""", "it fits")]
    [InlineData("""const said = `${sentence}.`;""", "#.")]
    public void Text_LeftInAView_IsSeen(string script, string text) =>
        Assert.Equal([text], ScriptLiterals.Of(script).Where(IsText).Select(one => one.Text));

    [Theory]
    [InlineData("""// The heap is "not at all" cold.""")]
    [InlineData("""/* Says "Heap" */ x("heap");""")]
    [InlineData("""h("p", { class: "card answer" }, say.heap, "–", full("power", 3));""")]
    [InlineData("""h("p", {}, kind === "boolean" ? say.yes : say.no);""")]
    [InlineData("""s("path", { d: "M12 3.5 22 20.5 2 20.5Z M12 10v4.5" });""")]
    [InlineData("""headers["Content-Type"] = "application/json";""")]
    [InlineData("""put(number, `${bare("power", x)}\u00a0±\u00a0${unit("power")}`);""")]
    [InlineData("""import { h } from "../dom.js";""")]
    public void Name_OfTheMachine_IsNoText(string script) =>
        Assert.DoesNotContain(ScriptLiterals.Of(script), IsText);

    private static IEnumerable<string> Scripts() => Assets.Paths.Where(path => path.EndsWith(".js", StringComparison.Ordinal));

    private static string TextOf(string path) => System.Text.Encoding.UTF8.GetString(Assets.Of(path).Content);

    // A sentence or a name looks like one; a single small word is told by where it goes.
    private static bool IsText(ScriptLiteral one) => !ForTheMachine().IsMatch(one.Before)
        && ((Sentence().IsMatch(one.Text) && !IsClassList(one.Text)) || (IsShown(one) && Word().IsMatch(one.Text)));

    private static bool IsShown(ScriptLiteral one) => Spoken().IsMatch(one.Before) || one.Call switch
    {
        "h" or "s" => one.Place >= 2,
        "put" => one.Place == 1,
        _ => false,
    };

    private static bool IsClassList(string text) =>
        text.Split(' ', StringSplitOptions.RemoveEmptyEntries).All(token => OpenClass().IsMatch(token) || Classes.Contains(token));

    [GeneratedRegex(@"^\W*[A-Z][a-z']+(?=[\s.,:;?!…#]|$)|[A-Za-z]{2,}[,.:;]? +[A-Za-z]{2,}|[\w#]\.$")]
    private static partial Regex Sentence();

    [GeneratedRegex("[A-Za-z]{2,}")]
    private static partial Regex Word();

    // What is compared with, a class, the sign of a unit.
    [GeneratedRegex(@"[!=]== $|\bclass: $|\bunit: $")]
    private static partial Regex ForTheMachine();

    [GeneratedRegex("^[a-z-]*#$")]
    private static partial Regex OpenClass();

    [GeneratedRegex("""(?:"aria-label"|"aria-valuetext"|\btitle|\bplaceholder|\balt): $|"(?:aria-label|aria-valuetext|title)", $""")]
    private static partial Regex Spoken();

    [GeneratedRegex(@"\.(?<name>[a-z][\w-]*)")]
    private static partial Regex ClassName();

    [GeneratedRegex(@"^import |^export [^=\n]* from |localStorage|document\.", RegexOptions.Multiline)]
    private static partial Regex ReachesOut();
}
