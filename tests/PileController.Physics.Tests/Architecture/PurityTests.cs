using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace PileController.Physics.Tests.Architecture;

/// <summary>The physics is a pure function of its arguments: no clock, chance, console, file, network, thread or task, and no C library.</summary>
public partial class PurityTests
{
    private static readonly Assembly Physics = typeof(Portable).Assembly;

    [Fact]
    public void Physics_ByReference_KnowsTheFrameworkAndMathNetOnly() =>
        Assert.All(
            Physics.GetReferencedAssemblies().Select(name => name.Name!),
            name => Assert.True(name.StartsWith("System", StringComparison.Ordinal) || name == "MathNet.Numerics", name));

    [Fact]
    public void Physics_InItsSource_NamesNothingImpure()
    {
        string[] found =
        [
            .. Sources().SelectMany(file => File.ReadLines(file)
                .Select((line, at) => (Line: WithoutComment(line), Where: $"{Path.GetFileName(file)}:{at + 1}"))
                .Where(row => Impure().IsMatch(row.Line))
                .Select(row => $"{row.Where}: {row.Line.Trim()}")),
        ];
        Assert.True(found.Length == 0, string.Join(Environment.NewLine, found));
    }

    [Fact]
    public void Physics_InItsFields_KeepsNoStaticState()
    {
        const BindingFlags all = BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;
        string[] found =
        [
            .. Physics.GetTypes()
                .Where(type => !type.IsDefined(typeof(CompilerGeneratedAttribute), inherit: false))
                .SelectMany(type => type.GetFields(all))
                .Where(field => field is { IsInitOnly: false, IsLiteral: false } && !field.IsDefined(typeof(CompilerGeneratedAttribute), inherit: false))
                .Select(field => $"{field.DeclaringType}.{field.Name}"),
        ];
        Assert.True(found.Length == 0, string.Join(", ", found));
    }

    [Theory]
    [InlineData("var now = DateTime.UtcNow;")]
    [InlineData("double e = Math.Exp(x);")]
    [InlineData("await Task.Delay(1);")]
    [InlineData("var chance = new Random(1);")]
    [InlineData("File.ReadAllText(path);")]
    public void PurityScan_OfImpureLines_FindsThem(string line) => Assert.Matches(Impure(), WithoutComment(line));

    [Theory]
    [InlineData("/// <summary>As <see cref=\"Math.Pow\"/>.</summary>")]
    [InlineData("double e = Portable.Exp(x) + Math.Sqrt(y);")]
    [InlineData("DateTime day = new(2012, 1, 1);")]
    public void PurityScan_OfPureLines_LeavesThem(string line) => Assert.DoesNotMatch(Impure(), WithoutComment(line));

    private static IEnumerable<string> Sources()
    {
        string root = SourceFolder();
        return Directory.EnumerateFiles(root, "*.cs", SearchOption.AllDirectories)
            .Where(file => !Path.GetRelativePath(root, file).Split(Path.DirectorySeparatorChar)[0].Equals("obj", StringComparison.Ordinal));
    }

    private static string SourceFolder()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            string folder = Path.Combine(at.FullName, "src", "PileController.Physics");
            if (Directory.Exists(folder))
            {
                return folder;
            }
        }

        throw new DirectoryNotFoundException("src/PileController.Physics lies above no folder of the test.");
    }

    private static string WithoutComment(string line)
    {
        int comment = line.IndexOf("//", StringComparison.Ordinal);
        return comment < 0 ? line : line[..comment];
    }

    [GeneratedRegex(
        @"\bDateTime(Offset)?\.(Utc)?(Now|Today)\b|\bTimeProvider\b|\bStopwatch\b|\bEnvironment\.(Tick|Machine|Processor|GetEnv)|\bRandom\b|\bGuid\.New"
        + @"|\bConsole\.|\bFile\.(Read|Write|Open|Append|Exists)|\bDirectory\.|\bHttpClient\b|\bSocket\b|\bThread\b|\bTask\b|\basync\b|\bawait\b|\bParallel\."
        + @"|\bMath\.(Exp|Log|Log2|Log10|Pow|Sin|Cos|Tan|SinCos|Asin|Acos|Atan|Atan2|Sinh|Cosh|Tanh|Cbrt|FusedMultiplyAdd)\b|\bMathF\.")]
    private static partial Regex Impure();
}
