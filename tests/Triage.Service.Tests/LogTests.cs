using System.Text;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Triage.Service.Http;
using Xunit;

namespace Triage.Service.Tests;

/// <summary>What strangers send is never obeyed by the terminal that shows the log, and is no reason for a page of stack trace.</summary>
public class LogTests(SharedBench shared) : IClassFixture<SharedBench>
{
    [Fact]
    public async Task What_a_caller_got_wrong_is_one_line_of_the_log()
    {
        using var client = new Client(shared.Bench.Address);
        foreach (var (path, body, type) in new[] { ("/api/jobs/2026-021/line", "{", "application/json"), ("/api/jobs/2026-021/held", "{}", "application/json"), ("/jobs/2026-021/line", "x", "multipart/form-data; boundary=b"), ("/api/find?take=many", "", "") })
        {
            var before = shared.Bench.Log.Count;
            using var request = new HttpRequestMessage(type.Length == 0 ? HttpMethod.Get : HttpMethod.Post, path);
            request.Content = type.Length == 0 ? null : new StringContent(body, Encoding.UTF8) { Headers = { ContentType = System.Net.Http.Headers.MediaTypeHeaderValue.Parse(type) } };
            using var answer = await client.Http.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Equal(400, (int)answer.StatusCode);
            Assert.DoesNotContain(shared.Bench.Log.Skip(before), line => line.TrimEnd().Contains('\n', StringComparison.Ordinal));
            Assert.Contains(shared.Bench.Log.Skip(before), line => line.Contains("refused with 400", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Control_signs_of_an_address_are_not_in_the_log()
    {
        using var written = new StringWriter { NewLine = "\n" };
        var entry = new LogEntry<string>(LogLevel.Warning, "Triage", default, "line on job \u001b[2J\u009b31m\r\n\u202Einfo: all is well\u0007", null, (state, _) => state);
        new LogLines().Write(entry, null, written);
        Assert.Equal("warning: Triage: line on job [2J31m info: all is well\n", written.ToString());
    }
}
