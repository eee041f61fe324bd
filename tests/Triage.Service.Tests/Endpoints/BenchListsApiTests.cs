using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using Xunit;

namespace Triage.Service.Tests.Endpoints;

/// <summary>What the bench has, changed by a program: parts in the drawer, instruments, settings, drawings.</summary>
public sealed class BenchListsApiTests(SharedBench shared) : IClassFixture<SharedBench>, IDisposable
{
    private static readonly byte[] Png = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, 1, 2, 3];

    private readonly ServedBench bench = shared.Bench;
    private readonly Client client = new(shared.Bench.Address);

    public void Dispose() => client.Dispose();

    [Fact]
    public async Task A_part_is_put_in_counted_tested_and_taken_off_the_list()
    {
        var put = Item(await client.Do("/api/drawer", new { part = "fuse", count = 3, rating = "T 630 mA", where = "tin 1" }), "T 630 mA");
        Assert.Equal(("Fuse", 3, false), (put.GetProperty("partName").GetString(), put.GetProperty("count").GetInt32(), put.GetProperty("tested").GetBoolean()));
        var item = put.GetProperty("item").GetString();
        Assert.Equal(1, Item(await client.Do("/api/drawer/counts", new { item, by = -2 }), "T 630 mA").GetProperty("count").GetInt32());
        await Refused(client.Post("/api/drawer/counts", new { item, by = -2 }), HttpStatusCode.UnprocessableEntity, "holds 1 of this fuse, fewer than 2");
        var tested = Item(await client.Do("/api/drawer/tests", new { item, good = true }), "T 630 mA").GetProperty("item").GetString()!;
        await Client.Body(await client.Send(HttpMethod.Delete, $"/api/drawer?item={Uri.EscapeDataString(tested)}"), 2);
        Assert.DoesNotContain("T 630 mA", (await client.Get("/api/drawer")).ToString());
        await Refused(client.Post("/api/drawer/counts", new { item, by = 1 }), HttpStatusCode.NotFound, "no such fuse any more");
        await Refused(client.Post("/api/drawer", new { part = "fuze", count = 1 }), HttpStatusCode.NotFound, "no part class “fuze”");
        await Refused(client.Post("/api/drawer", new { part = "fuse", count = 0 }), HttpStatusCode.UnprocessableEntity, "number of parts");
    }

    [Fact]
    public async Task The_part_that_a_job_needs_is_taken_from_the_drawer_before_one_is_ordered()
    {
        var job = (await client.Do("/api/jobs", new { machine = "Corvane K-61", complaint = "nothing on the display, forgets everything when switched off" })).GetProperty("job").GetProperty("id").GetString();
        await client.Do($"/api/jobs/{job}/tested", new { test = "ohms-across-backup", outcome = "flat-low" });
        var needed = await client.Get($"/api/jobs/{job}/needed-part");
        Assert.Equal("backup-capacitor", needed.GetProperty("part").GetString());
        var fit = needed.GetProperty("inDrawer")[0];
        Assert.Equal(("same", 2), (fit.GetProperty("fit").GetString(), fit.GetProperty("stock").GetProperty("count").GetInt32()));

        var item = fit.GetProperty("stock").GetProperty("item").GetString();
        var log = (await client.Do($"/api/jobs/{job}/from-drawer", new { item })).GetProperty("job").GetProperty("log");
        Assert.Contains("tested good", log[log.GetArrayLength() - 1].GetProperty("words").GetString(), StringComparison.Ordinal);
        Assert.Equal(1, Item(await client.Get("/api/drawer"), "0.1 F 5.5 V").GetProperty("count").GetInt32());
        var undone = await Client.Body(await client.Send(HttpMethod.Delete, $"/api/jobs/{job}/log/{log.GetArrayLength() - 1}"), 2);
        Assert.Equal("It lies in the drawer again: 2 there now.", undone.GetProperty("remarks")[0].GetString());
        await client.Do($"/api/jobs/{job}/from-drawer", new { item });
        await Refused(client.Post("/api/jobs/2026-005/from-drawer", new { item }), HttpStatusCode.Forbidden, "closed");
        Assert.Equal(1, Item(await client.Get("/api/drawer"), "0.1 F 5.5 V").GetProperty("count").GetInt32());
    }

    [Fact]
    public async Task An_instrument_is_set_up_off_its_sheet_read_back_alike_and_taken_away()
    {
        var typed = new { name = "bench meter", kind = "multimeter", input = "10 M", burden = "200 mV", cannot = new[] { "esr" }, ranges = new[] { "dc-volts 20 V, step 10 mV, 0.5 % + 2" } };
        var kept = (await client.Do("/api/instruments", typed)).GetProperty("instruments")[0];
        Assert.Equal(typed.ranges[0], kept.GetProperty("ranges")[0].GetString());
        await Refused(client.Post("/api/instruments", typed), HttpStatusCode.UnprocessableEntity, "instrument “bench meter” already");
        await Refused(client.Post("/api/instruments", new { name = "x", ranges = new[] { "dc-volts a lot" } }), HttpStatusCode.UnprocessableEntity, "Line 1 of the accuracy");

        var version = (await client.Get("/api/instruments")).GetProperty("version").GetString();
        await client.Do("/api/instruments", new { was = "bench meter", name = "old meter", version, ranges = typed.ranges });
        await Refused(client.Post("/api/instruments", new { was = "old meter", name = "older meter", version, ranges = typed.ranges }), HttpStatusCode.Conflict, "changed by somebody else");
        Assert.Empty((await Client.Body(await client.Send(HttpMethod.Delete, "/api/instruments?name=old%20meter"), 2)).GetProperty("instruments").EnumerateArray());
    }

    [Fact]
    public async Task Settings_change_where_something_is_said_and_stay_where_nothing_is()
    {
        var before = await client.Get("/api/settings");
        var after = await Client.Body(await client.Send(HttpMethod.Patch, "/api/settings", new { version = before.GetProperty("version").GetString(), valueOfHour = 20, handOverPrice = 65.5 }), 2);
        Assert.Equal((20, 65.5, 0.5, "kr"), (after.GetProperty("valueOfHour").GetDouble(), after.GetProperty("handOverPrice").GetDouble(), after.GetProperty("costOfDay").GetDouble(), after.GetProperty("currency").GetString()));
        Assert.Equal(before.GetProperty("tools").ToString(), after.GetProperty("tools").ToString());
        Assert.Contains("value-of-hour: 20        # money per hour", await File.ReadAllTextAsync(Path.Combine(bench.DemoFolder, "bench.yaml"), TestContext.Current.CancellationToken), StringComparison.Ordinal);

        var unlisted = await Client.Body(await client.Send(HttpMethod.Patch, "/api/settings", new { tools = Array.Empty<string>() }), 2);
        Assert.False(unlisted.TryGetProperty("tools", out _));
        await Refused(client.Send(HttpMethod.Patch, "/api/settings", new { costOfDay = -1 }), HttpStatusCode.UnprocessableEntity, "cost of a waiting day is -1");
        await Refused(client.Send(HttpMethod.Patch, "/api/settings", new { version = before.GetProperty("version").GetString(), costOfDay = 1 }), HttpStatusCode.Conflict, "changed by somebody else");
    }

    [Fact]
    public async Task A_drawing_is_put_to_its_device_by_what_it_holds_and_fetched_again()
    {
        var listed = await Client.Body(await Upload("/api/notes/corvane-k61/drawings?board=MB-2&shows=solder%20side:%20C14", Png, "image/png"), 2);
        var drawing = listed.GetProperty("drawings").EnumerateArray().Last();
        Assert.Equal((1, "MB-2", "solder side: C14"), (drawing.GetProperty("number").GetInt32(), drawing.GetProperty("board").GetString(), drawing.GetProperty("shows").GetString()));
        var file = await client.Send(HttpMethod.Get, "/api/notes/corvane-k61/drawings/1");
        Assert.Equal("image/png", file.Content.Headers.ContentType!.MediaType);
        Assert.Equal(Png, await file.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        Assert.Single((await client.Get("/api/notes/corvane-k61/drawings?board=MB-2")).GetProperty("drawings").EnumerateArray());

        await Refused(Upload("/api/notes/corvane-k61/drawings", Png, "image/png"), HttpStatusCode.UnprocessableEntity, "among the device's drawings already");
        await Refused(Upload("/api/notes/corvane-k61/drawings", "<svg onload='alert(1)'/>"u8.ToArray(), "image/png"), HttpStatusCode.UnprocessableEntity, "neither JPEG, PNG, WebP nor PDF");
        await Refused(Upload("/api/notes/corvane-k62/drawings", Png, "image/png"), HttpStatusCode.NotFound, "no device “corvane-k62”");
        await Refused(client.Send(HttpMethod.Get, "/api/notes/corvane-k61/drawings/9"), HttpStatusCode.NotFound, "no such drawing");
        Assert.Empty((await client.Get("/api/check")).EnumerateArray());
    }

    private Task<HttpResponseMessage> Upload(string path, byte[] content, string mediaType)
    {
        var body = new ByteArrayContent(content);
        body.Headers.ContentType = new MediaTypeHeaderValue(mediaType);
        return client.Http.PostAsync(path, body, TestContext.Current.CancellationToken);
    }

    private static JsonElement Item(JsonElement drawer, string rating) =>
        drawer.GetProperty("items").EnumerateArray().Single(i => i.TryGetProperty("rating", out var said) && said.GetString() == rating);

    private static async Task Refused(Task<HttpResponseMessage> sent, HttpStatusCode status, string what)
    {
        var response = await sent;
        Assert.Equal((status, "application/problem+json"), (response.StatusCode, response.Content.Headers.ContentType?.MediaType));
        Assert.Contains(what, (await Client.Body(response, 4)).GetProperty("title").GetString(), StringComparison.Ordinal);
    }
}
