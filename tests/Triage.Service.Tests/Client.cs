using System.Net.Http.Json;
using System.Text.Json;
using Xunit;

namespace Triage.Service.Tests;

/// <summary>A program that talks to the bench.</summary>
internal sealed class Client(Uri address) : IDisposable
{
    public HttpClient Http { get; } = new(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = address };

    public Task<HttpResponseMessage> Send(HttpMethod method, string path, object? body = null, string? ifMatch = null)
    {
        var request = new HttpRequestMessage(method, path) { Content = body is null ? null : JsonContent.Create(body) };
        if (ifMatch is not null)
            request.Headers.TryAddWithoutValidation("If-Match", ifMatch);
        return Http.SendAsync(request, TestContext.Current.CancellationToken);
    }

    public Task<HttpResponseMessage> Post(string path, object body) => Send(HttpMethod.Post, path, body);

    /// <summary>The body of an answer that must have gone well.</summary>
    public async Task<JsonElement> Do(string path, object body) => await Body(await Post(path, body), 2);

    public async Task<JsonElement> Get(string path) => await Body(await Send(HttpMethod.Get, path), 2);

    public static async Task<JsonElement> Body(HttpResponseMessage response, int hundreds)
    {
        var text = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True((int)response.StatusCode / 100 == hundreds, $"{(int)response.StatusCode}: {text}");
        return JsonDocument.Parse(text).RootElement;
    }

    public void Dispose() => Http.Dispose();
}
