using System.Net;
using Triage.Service.Tests.Pairing;
using Xunit;

namespace Triage.Service.Tests.Endpoints;

/// <summary>What is refused leaves nothing behind, in memory neither.</summary>
[CollectionDefinition(nameof(RefusedPhotosTests), DisableParallelization = true)]
[Collection(nameof(RefusedPhotosTests))]
public class RefusedPhotosTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private const int Sent = 40, Bytes = 11_500_000;

    [Theory]
    [InlineData("/api/jobs/2026-021/log/0/photos", false)]
    [InlineData("/api/jobs/2026-005/log/0/photos", true)]
    [InlineData("/jobs/2026-021/photo", false)]
    public async Task Forty_refused_photos_take_less_memory_than_three(string path, bool photo)
    {
        using var client = new Client(shared.Bench.Address);
        var content = new byte[Bytes];
        if (photo)
            new byte[] { 0xFF, 0xD8, 0xFF }.CopyTo(content, 0);
        var page = await client.Http.GetStringAsync("/jobs/2026-021/log", TestContext.Current.CancellationToken);
        var token = TestPhone.TokenField.Match(page).Groups[1].Value;
        await Send(client, path, content, token);
        var before = GC.GetTotalAllocatedBytes(precise: true);
        for (var n = 0; n < Sent; n++)
            Assert.InRange((int)(await Send(client, path, content, token)).StatusCode, 400, 499);
        Assert.InRange(GC.GetTotalAllocatedBytes(precise: true) - before, 0, 3L * Bytes);
    }

    private static async Task<HttpResponseMessage> Send(Client client, string path, byte[] content, string token)
    {
        HttpContent body = new ByteArrayContent(content) { Headers = { ContentType = new("image/jpeg") } };
        if (!path.StartsWith("/api", StringComparison.Ordinal))
            body = new MultipartFormDataContent { { new StringContent(token), "__RequestVerificationToken" }, { new StringContent("0"), "about" }, { body, "photo", "p.jpg" } };
        using var answered = body;
        return await client.Http.PostAsync(path, body, TestContext.Current.CancellationToken);
    }
}
