using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

namespace Triage.Service.Tests.Endpoints;

/// <summary>A call as it is sent, and as a line of <c>tests/fuzz/api.jsonl</c>, where every call that once failed is kept.</summary>
/// <param name="Type">Media type; null for a body without one.</param>
/// <param name="Body">In it, <see cref="Token"/> stands for the proof that a form came from the bench's own page.</param>
internal sealed record SentCall(string Method, string Path, string? Type = null, string? Body = null)
{
    public const string Token = "FORM-TOKEN";

    public static SentCall Read(string line) => JsonSerializer.Deserialize<SentCall>(line)!;

    public HttpRequestMessage Request(string token)
    {
        var request = new HttpRequestMessage(new(Method), new Uri(Path, UriKind.Relative));
        if (Body is null)
            return request;
        request.Content = new ByteArrayContent(Encoding.UTF8.GetBytes(Body.Replace(Token, Type?.StartsWith("multipart/", StringComparison.Ordinal) == true ? token : Uri.EscapeDataString(token), StringComparison.Ordinal)));
        request.Content.Headers.ContentType = Type is null ? null : MediaTypeHeaderValue.Parse(Type);
        return request;
    }

    public override string ToString() => JsonSerializer.Serialize(this);
}
