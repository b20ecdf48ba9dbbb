using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using PileController.Settings.Changes;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Editing;

public class SettingsApiTests
{
    [Fact]
    public async Task Get_TellsEverySettingWithWhatIsAllowed()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement body = await host.GetAsync("/api/settings");

        JsonElement[] rows = [.. body.GetProperty("settings").EnumerateArray()];
        JsonElement floor = rows.Single(row => row.GetProperty("path").GetString() == "control.floor");
        Assert.Equal("45 °C", floor.GetProperty("value").GetString());
        Assert.Contains("35 °C to 60 °C", floor.GetProperty("allowed").GetString());
        Assert.False(floor.GetProperty("changed").GetBoolean());
        JsonElement address = rows.Single(row => row.GetProperty("path").GetString() == "panel.address");
        Assert.Contains("who reaches", address.GetProperty("inTheFile").GetString());
        Assert.All(rows, row => Assert.NotEmpty(row.GetProperty("doc").GetString()!));
    }

    [Fact]
    public async Task Try_AnEdit_TellsTheDifferenceAndChangesNothing()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement tried = await PostAsync(host, "/api/settings/try", new { set = new Dictionary<string, string> { ["control.floor"] = "47 °C" } }, HttpStatusCode.OK);

        JsonElement difference = Assert.Single(tried.GetProperty("differences").EnumerateArray().ToArray());
        Assert.Equal("45 °C", difference.GetProperty("was").GetString());
        Assert.Equal("47 °C", difference.GetProperty("is").GetString());
        Assert.False(File.Exists(Path.Combine(host.Folder, SettingsDesk.FileName)));
        Assert.NotEqual(tried.GetProperty("fingerprint").GetString(), (await host.GetAsync("/api/settings")).GetProperty("fingerprint").GetString());
    }

    [Fact]
    public async Task Post_WrongValue_IsRefusedWithTheSettingsName()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement answer = await PostAsync(
            host, "/api/settings", new { set = new Dictionary<string, string> { ["interlocks.supplyMost"] = "89 °C" }, who = "Robin" }, HttpStatusCode.BadRequest);

        JsonElement fault = Assert.Single(answer.GetProperty("faults").EnumerateArray().ToArray());
        Assert.Equal("interlocks.supplyMost", fault.GetProperty("path").GetString());
        Assert.Contains("not loosened", fault.GetProperty("allowed").GetString());
        Assert.False(File.Exists(Path.Combine(host.Folder, SettingsDesk.FileName)));
    }

    [Fact]
    public async Task Post_OnOtherSettingsThanSeen_IsRefused()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        await PostAsync(
            host, "/api/settings", new { set = new Dictionary<string, string> { ["control.floor"] = "47 °C" }, who = "Robin", @base = "abc" }, HttpStatusCode.Conflict);

        Assert.False(File.Exists(Path.Combine(host.Folder, SettingsDesk.FileName)));
    }

    [Theory]
    [InlineData("""{"set":[],"who":"x"}""", "set")]
    [InlineData("""{"set":{"control.floor":"47 °C"}}""", "who")]
    [InlineData("""{"reset":"control.floor","who":"x"}""", "reset")]
    [InlineData("""{"reset":[1],"who":"x"}""", "reset")]
    [InlineData("""{"set":{"control.floor":1,"control.floor":2},"who":"x"}""", "set.control.floor")]
    public async Task Post_WrongBody_NamesTheField(string json, string field)
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using StringContent content = new(json, System.Text.Encoding.UTF8, "application/json");

        using HttpResponseMessage answer = await host.Client.PostAsync("/api/settings", content);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(field, (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("field").GetString());
    }

    [Fact]
    public async Task Post_SoundChange_IsWrittenAndStopsTheHostToBeBuiltAnew()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement answer = await PostAsync(
            host, "/api/settings", new { set = new Dictionary<string, string> { ["control.floor"] = "47 °C" }, who = "Robin" }, HttpStatusCode.Accepted);
        await host.Stopping;

        Assert.Single(answer.GetProperty("differences").EnumerateArray().ToArray());
        ChangeEntry entry = Assert.Single(ChangeBook.FromJson(await File.ReadAllTextAsync(Path.Combine(host.Folder, SettingsDesk.FileName))).Entries);
        Assert.Equal(("Robin", "127.0.0.1", "\"47 °C\""), (entry.Who, entry.From, entry.Is));
    }

    private static async Task<JsonElement> PostAsync(PanelHost host, string path, object body, HttpStatusCode expected)
    {
        using HttpResponseMessage answer = await host.Client.PostAsJsonAsync(path, body);
        Assert.Equal(expected, answer.StatusCode);
        return await answer.Content.ReadFromJsonAsync<JsonElement>();
    }
}
