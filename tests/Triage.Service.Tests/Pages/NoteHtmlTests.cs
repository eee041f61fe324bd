using Triage.Service.NotePages;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>Rendered Markdown can be read and nothing else. Cases after the OWASP cheat sheet "XSS Filter Evasion" (from memory).</summary>
public class NoteHtmlTests
{
    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("<img src=x onerror=alert(1)>")]
    [InlineData("[a](javascript:alert(1))")]
    [InlineData("[a](JaVaScRiPt:alert(1))")]
    [InlineData("![a](javascript:alert(1))")]
    [InlineData("<a href=\"data:text/html,<script>alert(1)</script>\">a</a>")]
    [InlineData("[a](vbscript:x)")]
    [InlineData("<iframe src=\"//attacker.example\"></iframe>")]
    public void Nothing_runs(string markdown)
    {
        var html = NoteHtml.Of(markdown).Value;
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<iframe", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img src", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<a href=\"javascript", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<a href=\"data", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<a href=\"vbscript", html, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Links_between_notes_lead_to_their_pages() =>
        Assert.Contains("<a href=\"/notes/corvane-k61\">the keyboard</a>", NoteHtml.Of("see [the keyboard](note:corvane-k61)").Value);

    [Fact]
    public void Tables_and_lists_stay() =>
        Assert.Contains("<td>4.9 V</td>", NoteHtml.Of("| rail | volts |\n|---|---|\n| main | 4.9 V |\n").Value);
}
