using System.Net;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Triage.Service.Phones;
using Xunit;

namespace Triage.Service.Tests.Pairing;

/// <summary>A phone on the network: speaks HTTPS, keeps its cookies, and trusts the one certificate whose fingerprint was shown.</summary>
internal sealed partial class TestPhone : IDisposable
{
    private readonly HttpClient http;

    public TestPhone(Invitation invitation)
    {
        var handler = new HttpClientHandler
        {
            AllowAutoRedirect = false,
            CookieContainer = Cookies,
            ServerCertificateCustomValidationCallback = (_, certificate, _, _) =>
                Convert.ToHexString(SHA256.HashData(certificate!.RawData)) == invitation.Fingerprint.Replace(":", "", StringComparison.Ordinal),
        };
        http = new(handler) { BaseAddress = invitation.Address };
    }

    public CookieContainer Cookies { get; } = new();

    public async Task<HttpResponseMessage> Send(HttpMethod method, string path, string accept = "text/html", string? host = null, params (string, string)[] fields)
    {
        using var request = new HttpRequestMessage(method, path);
        request.Headers.Add("Accept", accept);
        request.Headers.Host = host;
        if (method == HttpMethod.Post)
            request.Content = new FormUrlEncodedContent(fields.Select(f => new KeyValuePair<string, string>(f.Item1, f.Item2)));
        return await http.SendAsync(request, TestContext.Current.CancellationToken);
    }

    public Task<HttpResponseMessage> Get(string path, string accept = "text/html") => Send(HttpMethod.Get, path, accept);

    /// <summary>Types the code on the pairing page.</summary>
    public async Task<HttpResponseMessage> Pair(string code, string name = "shop phone") =>
        await Send(HttpMethod.Post, "/pair", fields: [("__RequestVerificationToken", await Token("/pair")), ("code", code), ("name", name)]);

    public async Task<string> Token(string path)
    {
        var page = await (await Get(path)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        return TokenField.Match(page).Groups[1].Value;
    }

    public void Dispose() => http.Dispose();

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    public static partial Regex TokenField { get; }
}
