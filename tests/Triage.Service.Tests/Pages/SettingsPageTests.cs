using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Triage.Workshop.Steps;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>The page holds what can be set anywhere else.</summary>
public sealed partial class SettingsPageTests
{
    [Fact]
    public async Task Every_amount_that_can_be_set_stands_on_the_page_and_is_kept_from_there()
    {
        await using var bench = await ServedBench.Start();
        using var http = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = bench.Address };
        var amounts = typeof(ChangedSettings).GetProperties().Where(p => p.PropertyType == typeof(double?)).ToDictionary(p => p.Name, p => Field(p.Name));
        Assert.NotEmpty(amounts);

        var page = await http.GetStringAsync("/settings", TestContext.Current.CancellationToken);
        Dictionary<string, string> sent = new()
        {
            ["__RequestVerificationToken"] = Value(page, "__RequestVerificationToken"), ["version"] = Value(page, "version"), ["currency"] = "kr", ["tools"] = "",
        };
        foreach (var (n, field) in amounts.Values.Index())
            sent[field] = (21 + n).ToString(CultureInfo.InvariantCulture);
        using var form = new FormUrlEncodedContent(sent);
        Assert.Equal(HttpStatusCode.SeeOther, (await http.PostAsync(new Uri("/settings", UriKind.Relative), form, TestContext.Current.CancellationToken)).StatusCode);

        var now = bench.Live.Current.Settings;
        Assert.All(amounts.Keys.Index(), amount => Assert.Equal(21.0 + amount.Index, now.GetType().GetProperty(amount.Item)!.GetValue(now)));
    }

    private static string Value(string page, string field) => WebUtility.HtmlDecode(Regex.Match(page, $"name=\"{field}\"[^>]*value=\"([^\"]*)\"").Groups[1].Value);

    private static string Field(string property) => Capital().Replace(property, "-$0").TrimStart('-').ToLowerInvariant();

    [GeneratedRegex("[A-Z]")]
    private static partial Regex Capital();
}
