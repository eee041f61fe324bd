using System.Net;
using System.Text;
using Xunit;

namespace Triage.Service.Tests.Endpoints;

/// <summary>Whatever is wrong, the answer is a problem document (RFC 9457) that says what and what to do instead.</summary>
public sealed class ProblemsTests(SharedBench shared) : IClassFixture<SharedBench>, IDisposable
{
    private readonly Client client = new(shared.Bench.Address);

    public void Dispose() => client.Dispose();

    [Fact]
    public Task An_unknown_machine_is_named_and_kinds_are_offered() =>
        Refused(client.Post("/api/ask", new { machine = "Zorbelic 9", complaint = "no sound" }), HttpStatusCode.NotFound, "Zorbelic 9", "Electronic keyboard");

    [Fact]
    public Task An_empty_complaint_is_no_complaint() =>
        Refused(client.Post("/api/ask", new { machine = "Corvane K-61", complaint = "  " }), HttpStatusCode.UnprocessableEntity, "No complaint", "few words");

    [Fact]
    public Task A_complaint_of_100_kB_is_too_long() =>
        Refused(client.Post("/api/jobs", new { machine = "Corvane K-61", complaint = new string('x', 100_000) }), HttpStatusCode.UnprocessableEntity, "100,000 characters", "Shorten");

    [Theory]
    [InlineData("🎹🔇🔌")]
    [InlineData("электроника не включается")]
    public async Task A_complaint_that_nobody_can_read_is_still_answered_and_says_what_was_not_understood(string complaint)
    {
        var asked = await client.Do("/api/ask", new { machine = "Corvane K-61", complaint });
        Assert.Empty(asked.GetProperty("findings").EnumerateArray());
        Assert.NotEmpty(asked.GetProperty("remarks").EnumerateArray());
        var taken = await client.Do("/api/jobs", new { machine = "Corvane K-61", complaint });
        Assert.Equal(complaint, taken.GetProperty("job").GetProperty("complaint").GetString());
    }

    [Fact]
    public Task An_unknown_job_is_named_and_the_nearest_offered() =>
        Refused(client.Post("/api/jobs/2026-0220/line", new { text = "x" }), HttpStatusCode.NotFound, "2026-0220", "2026-022");

    [Fact]
    public Task An_unknown_job_cannot_be_read() =>
        Refused(client.Send(HttpMethod.Get, "/api/jobs/none/answer"), HttpStatusCode.NotFound, "none", "find");

    [Fact]
    public Task A_reading_needs_its_unit() =>
        Refused(client.Post("/api/jobs/2026-023/readings", new { from = "C14 +", value = "12" }), HttpStatusCode.UnprocessableEntity, "12", "unit");

    [Fact]
    public Task A_test_has_its_own_outcomes() =>
        Refused(client.Post("/api/jobs/2026-021/tested", new { test = "ohms-across-backup", outcome = "purple" }), HttpStatusCode.UnprocessableEntity, "purple", "flat-low");

    [Fact]
    public Task A_word_that_no_outcome_has_is_shown_where_it_stands() =>
        Refused(client.Post("/api/jobs/2026-021/resets", new { reset = "ostrelle-om54-reset", effect = "purple" }), HttpStatusCode.BadRequest, "JSON", "$.effect");

    [Fact]
    public Task A_price_below_nothing_is_refused() =>
        Refused(client.Post("/api/jobs/2026-022/parts", new { part = "belt", state = "ordered", price = -3 }), HttpStatusCode.UnprocessableEntity, "price", "0 or more");

    [Fact]
    public Task A_closed_job_takes_no_more_steps() =>
        Refused(client.Post("/api/jobs/2026-005/line", new { text = "x" }), HttpStatusCode.Forbidden, "closed", "follow-up");

    [Fact]
    public Task What_is_not_JSON_is_said_to_be_none() =>
        Refused(client.Http.PostAsync("/api/ask", new StringContent("{\"complaint\":", Encoding.UTF8, "application/json"), TestContext.Current.CancellationToken), HttpStatusCode.BadRequest, "JSON", "openapi");

    [Fact]
    public Task An_address_that_is_none_says_where_to_start() =>
        Refused(client.Send(HttpMethod.Get, "/api/nothing"), HttpStatusCode.NotFound, "Not Found", "/openapi/v1.json");

    private static async Task Refused(Task<HttpResponseMessage> sent, HttpStatusCode status, string what, string instead)
    {
        var response = await sent;
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
        var problem = await Client.Body(response, (int)status / 100);
        Assert.Equal(status, response.StatusCode);
        Assert.Contains(what, problem.GetProperty("title").GetString());
        Assert.Contains(instead, problem.GetProperty("detail").GetString());
        Assert.DoesNotContain("   at ", problem.ToString());
    }
}
