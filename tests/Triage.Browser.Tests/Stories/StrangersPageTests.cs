using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Browser.Tests.Stories;

/// <summary>A page of another origin, open in the same browser, tries every way it has to write into a job.</summary>
public class StrangersPageTests
{
    private const string Attack = """
        async target => {
            const line = target + '/api/jobs/2026-021/line', json = JSON.stringify({ text: 'from elsewhere' });
            const bodies = [json, new Blob([json]), new Blob([json], { type: 'text/plain' }), new URLSearchParams({ text: 'from elsewhere' }), new FormData(), undefined];
            for (const path of [line, target + '/api/jobs/2026-021/counter-closed', target + '/jobs/2026-021/line', target + '/jobs/2026-021/close'])
                for (const body of bodies)
                    await fetch(path, { method: 'POST', mode: 'no-cors', credentials: 'include', body }).catch(() => null);
            await fetch(line, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: json }).catch(() => null);
            await fetch(target + '/api/jobs/2026-021/waiting', { method: 'DELETE' }).catch(() => null);
            navigator.sendBeacon(line, json);
            navigator.sendBeacon(line, new Blob([json], { type: 'text/plain' }));
            for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data'])
                await new Promise(done => {
                    const frame = document.createElement('iframe'), form = document.createElement('form');
                    frame.name = 'f' + Math.random();
                    Object.assign(form, { method: 'post', action: line, enctype: type, target: frame.name });
                    form.innerHTML = `<input name='{"text":"from elsewhere","a":"' value='"}'>`;
                    document.body.append(frame, form);
                    setTimeout(done, 1000);
                    form.submit();
                });
            return 'tried';
        }
        """;

    [Fact]
    public async Task Nothing_that_another_origin_sends_is_written()
    {
        await using var phone = await Phone.Open(script: true);
        var builder = WebApplication.CreateEmptyBuilder(new());
        builder.WebHost.UseKestrelCore().UseUrls("http://127.0.0.1:0");
        await using var elsewhere = builder.Build();
        elsewhere.Run(http => { http.Response.ContentType = "text/html"; return http.Response.WriteAsync("<!doctype html><p>elsewhere", TestContext.Current.CancellationToken); });
        await elsewhere.StartAsync(TestContext.Current.CancellationToken);
        var before = phone.Bench.Live.Current.Notes.Find<Job>("2026-021")!;
        await phone.Page.GotoAsync(elsewhere.Urls.First());
        Assert.Equal("tried", await phone.Page.EvaluateAsync<string>(Attack, phone.Bench.Address.ToString().TrimEnd('/')));
        var after = phone.Bench.Live.Current.Notes.Find<Job>("2026-021")!;
        Assert.Equal(before.Log.Length, after.Log.Length);
        Assert.True(after.IsOpen);
        Assert.Equal(before.WaitsFor, after.WaitsFor);
        // they did arrive, and were turned away
        Assert.Contains(phone.Bench.Log, l => l.Contains("/api/jobs/2026-021/line", StringComparison.Ordinal) && l.Contains(" 403 ", StringComparison.Ordinal));
    }
}
