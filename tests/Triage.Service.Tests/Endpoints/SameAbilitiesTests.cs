using System.Net;
using System.Text.Json;
using Triage.Workshop;
using Triage.Workshop.Steps;
using Xunit;

namespace Triage.Service.Tests.Endpoints;

/// <summary>What the job's steps can do, the JSON API can do: each step has an address, named in the OpenAPI document.</summary>
public sealed class SameAbilitiesTests(SharedBench shared) : IClassFixture<SharedBench>, IDisposable
{
    /// <summary>Step to address; {id} stands for the job, the note or the device.</summary>
    private static readonly Dictionary<string, string> Addresses = new()
    {
        ["JobSteps.Ask"] = "POST /api/ask", ["JobSteps.TakeIn"] = "POST /api/jobs", ["JobSteps.Line"] = "POST /api/jobs/{id}/line", ["JobSteps.Photo"] = "POST /api/jobs/{id}/log/{entry}/photos",
        ["JobSteps.Saw"] = "POST /api/jobs/{id}/saw", ["JobSteps.Tested"] = "POST /api/jobs/{id}/tested", ["JobSteps.Reading"] = "POST /api/jobs/{id}/readings", ["JobSteps.Reset"] = "POST /api/jobs/{id}/resets",
        ["JobSteps.Held"] = "POST /api/jobs/{id}/held", ["JobSteps.Fixed"] = "POST /api/jobs/{id}/fixes", ["JobSteps.Swapped"] = "POST /api/jobs/{id}/swaps", ["JobSteps.Opened"] = "POST /api/jobs/{id}/opened",
        ["JobSteps.TakenOff"] = "POST /api/jobs/{id}/taken-off", ["JobSteps.Powered"] = "POST /api/jobs/{id}/power", ["JobSteps.PartMoved"] = "POST /api/jobs/{id}/parts", ["JobSteps.Agree"] = "POST /api/jobs/{id}/consent",
        ["JobSteps.Undo"] = "DELETE /api/jobs/{id}/log/{entry}", ["JobSteps.PutBack"] = "POST /api/jobs/{id}/log/{entry}", ["JobSteps.WaitFor"] = "POST /api/jobs/{id}/waiting", ["JobSteps.Close"] = "POST /api/jobs/{id}/close",
        ["JobSteps.Round"] = "POST /api/jobs/{id}/rounds", ["JobSteps.Skip"] = "POST /api/jobs/{id}/skipped", ["JobSteps.Secured"] = "POST /api/jobs/{id}/secured", ["JobSteps.CloseCounter"] = "POST /api/jobs/{id}/counter-closed", ["JobSteps.TellBuild"] = "POST /api/jobs/{id}/build",
        ["JobSteps.FollowUp"] = "POST /api/jobs/{id}/follow-ups", ["Listing.Finding"] = "POST /api/jobs/{id}/new-finding", ["Listing.Fault"] = "POST /api/jobs/{id}/new-fault",
        ["Listing.Test"] = "POST /api/jobs/{id}/new-test", ["Listing.Device"] = "POST /api/jobs/{id}/new-device", ["NoteEditing.Save"] = "PUT /api/notes/{id}/text",
        ["Drawer.Add"] = "POST /api/drawer", ["Drawer.Move"] = "POST /api/drawer/counts", ["Drawer.Test"] = "POST /api/drawer/tests", ["Drawer.Remove"] = "DELETE /api/drawer",
        ["Drawer.Take"] = "POST /api/jobs/{id}/from-drawer", ["InstrumentEditing.Keep"] = "POST /api/instruments", ["InstrumentEditing.Remove"] = "DELETE /api/instruments",
        ["SettingsEditing.Save"] = "PATCH /api/settings", ["DrawingEditing.Add"] = "POST /api/notes/{id}/drawings",
        ["NoteHistory.BringBack"] = "POST /api/notes/{id}/history/{version}", ["NoteHistory.Erase"] = "DELETE /api/notes/{id}/history",
    };

    private static readonly Type[] Abilities = [typeof(JobSteps), typeof(Listing), typeof(NoteEditing), typeof(Drawer), typeof(InstrumentEditing), typeof(SettingsEditing), typeof(DrawingEditing), typeof(NoteHistory)];

    private static readonly Type[] Results = [typeof(StepResult), typeof(NoteSaved), typeof(Asking), typeof(Refusal)];

    private readonly Client client = new(shared.Bench.Address);

    public void Dispose() => client.Dispose();

    [Fact]
    public async Task Every_step_has_an_address()
    {
        var paths = (await client.Get("/openapi/v1.json")).GetProperty("paths");
        var steps = Abilities.SelectMany(t => t.GetMethods().Where(m => Results.Contains(m.ReturnType)).Select(m => $"{t.Name}.{m.Name}")).Distinct().ToList();

        Assert.Equal(Addresses.Keys.Order(), steps.Order());
        Assert.All(steps, step =>
        {
            var (method, path) = Addresses[step].Split(' ') is [var m, var p] ? (m, p) : default;
            Assert.True(paths.TryGetProperty(path, out var at) && at.TryGetProperty(method.ToLowerInvariant(), out _), $"{step}: {method} {path} is not in the document");
        });
    }

    [Fact]
    public async Task An_entry_taken_back_can_be_put_back_where_it_stood()
    {
        var id = await Job();
        await client.Do($"/api/jobs/{id}/line", new { text = "lid off" });
        var before = (await client.Get($"/api/jobs/{id}")).GetProperty("log").ToString();
        var entry = (await client.Get($"/api/jobs/{id}/log/0")).GetProperty("text").GetString();

        await Client.Body(await client.Send(HttpMethod.Delete, $"/api/jobs/{id}/log/0"), 2);
        await client.Do($"/api/jobs/{id}/log/0", new { text = entry });

        Assert.Equal(before, (await client.Get($"/api/jobs/{id}")).GetProperty("log").ToString());
        Assert.Equal(HttpStatusCode.NotFound, (await client.Send(HttpMethod.Get, $"/api/jobs/{id}/log/99")).StatusCode);
    }

    [Fact]
    public async Task What_was_missed_is_listed_and_then_recorded()
    {
        var id = await Job();
        await client.Do($"/api/jobs/{id}/new-finding", new { words = "left reel squeals", says = new[] { "squeaks on the left" } });
        await client.Do($"/api/jobs/{id}/new-test", new { words = "turn the left reel by hand", finding = "left-reel-squeals", way = "Look", minutes = 1 });

        await client.Do($"/api/jobs/{id}/saw", new { finding = "left-reel-squeals", value = "yes" });
        var again = await Client.Body(await client.Post($"/api/jobs/{id}/new-finding", new { words = "Left reel squeals" }), 4);

        Assert.Contains("listed already", again.GetProperty("title").GetString(), StringComparison.Ordinal);
        Assert.Equal(2, (await client.Get("/api/find?q=left%20reel%20squeals&kind=finding&kind=test")).GetProperty("hits").EnumerateArray().Count(h => h.GetProperty("title").GetString()!.Contains("left reel", StringComparison.OrdinalIgnoreCase)));
    }

    [Fact]
    public async Task What_to_look_at_by_the_way_is_said_while_the_machine_is_open()
    {
        var id = await Job();
        await client.Do($"/api/jobs/{id}/opened", new { step = "case" });
        Assert.NotEmpty((await client.Get($"/api/jobs/{id}")).GetProperty("whileOpen").EnumerateArray());
        await client.Do($"/api/jobs/{id}/opened", new { step = "case", shut = true });
        Assert.Empty((await client.Get($"/api/jobs/{id}")).GetProperty("whileOpen").EnumerateArray());
    }

    [Fact]
    public async Task A_note_is_saved_as_text_and_never_over_a_newer_one()
    {
        var id = await Job();
        var read = await client.Get($"/api/notes/{id}/text");
        var (text, version) = (read.GetProperty("text").GetString()!, read.GetProperty("version").GetString()!);

        var saved = await Client.Body(await client.Send(HttpMethod.Put, $"/api/notes/{id}/text", new { version, text = text + "\nBought at a jumble sale.\n" }), 2);
        var stale = await client.Send(HttpMethod.Put, $"/api/notes/{id}/text", new { version, text });
        var broken = await Client.Body(await client.Send(HttpMethod.Put, $"/api/notes/{id}/text", new { version = saved.GetProperty("version").GetString(), text = text.Replace("kind: job", "kind: jbo", StringComparison.Ordinal) }), 2);

        Assert.True(saved.GetProperty("written").GetBoolean());
        Assert.Equal(HttpStatusCode.Conflict, stale.StatusCode);
        Assert.False(broken.GetProperty("written").GetBoolean());
        Assert.NotEmpty(broken.GetProperty("problems").EnumerateArray());
        Assert.Contains("jumble sale", (await client.Get($"/api/notes/{id}/text")).GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_search_puts_spelling_right_and_finds_notes_like_one()
    {
        var misspelt = await client.Get("/api/find?q=capasitor%20leeking");
        var like = await client.Get("/api/find?like=backup-capacitor-shorted&take=3&sort=Held");

        Assert.Contains("capacitor", misspelt.GetProperty("didYouMean").GetString(), StringComparison.Ordinal);
        Assert.DoesNotContain(like.GetProperty("hits").EnumerateArray(), h => h.GetProperty("id").GetString() == "backup-capacitor-shorted");
        Assert.Equal(3, like.GetProperty("hits").GetArrayLength());
    }

    private async Task<string> Job() =>
        (await client.Do("/api/jobs", new { complaint = "tape drags and the left side is noisy", machine = "cassette deck" })).GetProperty("job").GetProperty("id").GetString()!;
}
