using System.Reflection;

namespace PileController.Tests.Architecture;

/// <summary>References go one way: Physics ← Control ← Rigs ← Records ← PileController.</summary>
public sealed class RoomTests
{
    private static readonly string[] Rooms =
        ["PileController.Physics", "PileController.Control", "PileController.Rigs", "PileController.Records", "PileController"];

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Room_RefersToEarlierRoomsOnly(int index)
    {
        string[] referred = [.. Load(index).GetReferencedAssemblies().Select(a => a.Name!).Where(Rooms.Contains)];

        Assert.All(referred, name => Assert.True(Array.IndexOf(Rooms, name) < index, $"{Rooms[index]} refers to {name}"));
    }

    [Theory]
    [InlineData(0, "MathNet.Numerics")]
    [InlineData(1, "Stateless")]
    public void PureRoom_RefersToTheFrameworkAndItsOnePackageOnly(int index, string package)
    {
        IEnumerable<string> others = Load(index).GetReferencedAssemblies().Select(a => a.Name!)
            .Where(name => !Rooms.Contains(name) && name != package && !name.StartsWith("System", StringComparison.Ordinal) && name != "netstandard");

        Assert.Empty(others);
    }

    // The physics room has the like among its own tests.
    [Fact]
    public void Control_NamesNoClockFileRandomnessOrTask()
    {
        const string room = "PileController.Control";
        string[] forbidden =
        [
            "DateTime.Now", "DateTime.UtcNow", "DateTimeOffset.Now", "DateTimeOffset.UtcNow", "Stopwatch", "TimeProvider", "Environment.",
            "File.", "Directory.", "Console.", "new Random", "Random.Shared", "Guid.NewGuid", "Task.", "async ", "ILogger", "Thread.",
        ];
        foreach (string file in Directory.EnumerateFiles(Path.Combine(Repository.Root, "src", room), "*.cs", SearchOption.AllDirectories))
        {
            if (file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            {
                continue;
            }

            IEnumerable<string> code = File.ReadLines(file).Select(line => line.TrimStart()).Where(line => !line.StartsWith("//", StringComparison.Ordinal));
            Assert.All(code, line => Assert.All(forbidden, word => Assert.False(
                System.Text.RegularExpressions.Regex.IsMatch(line, $@"(?<![\w.]){System.Text.RegularExpressions.Regex.Escape(word)}"),
                $"{file}: {line}")));
        }
    }

    private static Assembly Load(int index) => Assembly.Load(Rooms[index]);
}
