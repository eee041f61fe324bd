using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Xunit;

namespace Triage.Service.Tests.Endpoints;

/// <summary>A program that knows the OpenAPI document and nothing else: what is not in it, it can neither send nor understand.</summary>
internal sealed class DocumentedClient(HttpClient http, JsonElement document)
{
    public static async Task<DocumentedClient> Of(HttpClient http) =>
        new(http, JsonDocument.Parse(await http.GetStringAsync("/openapi/v1.json", TestContext.Current.CancellationToken)).RootElement);

    /// <param name="path">As the document has it; {id} and {entry} are filled in from the rest.</param>
    public Task<JsonElement> Get(string path, params object[] parts) => Json(HttpMethod.Get, path, null, parts);

    public Task<JsonElement> Post(string path, object body, params object[] parts) => Json(HttpMethod.Post, path, body, parts);

    public async Task<byte[]> File(string path, params object[] parts) =>
        await (await Send(HttpMethod.Get, path, null, parts)).Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);

    /// <summary>A status that the document says of this operation.</summary>
    public async Task<HttpResponseMessage> Send(HttpMethod method, string path, HttpContent? body, params object[] parts)
    {
        var at = path.Split('?')[0];
        Assert.True(document.GetProperty("paths").TryGetProperty(at, out var known) && known.TryGetProperty(method.Method.ToLowerInvariant(), out _), $"{method} {at} is not in the document");
        var operation = known.GetProperty(method.Method.ToLowerInvariant());
        if (body is not null)
            Check(operation.GetProperty("requestBody").GetProperty("content"), body);
        var filled = parts.Aggregate(path, (p, part) => p[..p.IndexOf('{')] + Uri.EscapeDataString($"{part}") + p[(p.IndexOf('}') + 1)..]);
        var response = await http.SendAsync(new(method, filled) { Content = body }, TestContext.Current.CancellationToken);
        Assert.True(operation.GetProperty("responses").TryGetProperty($"{(int)response.StatusCode}", out _),
            $"{method} {at} answers {(int)response.StatusCode}, of which the document says nothing: {await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)}");
        return response;
    }

    public static HttpContent Picture(byte[] content) => new ByteArrayContent(content) { Headers = { ContentType = new MediaTypeHeaderValue("image/png") } };

    private async Task<JsonElement> Json(HttpMethod method, string path, object? body, object[] parts) =>
        await Client.Body(await Send(method, path, body is null ? null : JsonContent.Create(body), parts), 2);

    /// <summary>The media type is listed, and of a JSON body every field is.</summary>
    private void Check(JsonElement content, HttpContent body)
    {
        Assert.True(content.TryGetProperty(body.Headers.ContentType!.MediaType!, out var media), $"{body.Headers.ContentType} is not in the document");
        if (body is not JsonContent { Value: { } value })
            return;
        var schema = document.GetProperty("components").GetProperty("schemas").GetProperty(media.GetProperty("schema").GetProperty("$ref").GetString()!.Split('/')[^1]);
        var sent = JsonSerializer.SerializeToElement(value, JsonSerializerOptions.Web).EnumerateObject().Select(p => p.Name);
        Assert.Empty(sent.Except(schema.GetProperty("properties").EnumerateObject().Select(p => p.Name)));
    }
}
