using Triage.Notes.Markdown;

namespace Triage.Notes.Tests.Markdown;

public sealed class NoteMarkdownTests
{
    [Fact]
    public void PlainTextHoldsTheWordsAlone() =>
        Assert.Equal("Head\nOne two three\n", NoteMarkdown.PlainText("# Head\n\nOne **two** [three](note:x)\n"));

    [Fact]
    public void LinksToNotesAreFoundWithTheirPlaces() => Assert.Equal(
        [new NoteLink("backup-capacitor", 1, 5), new NoteLink("k-61", 3, 3)],
        NoteMarkdown.Links("See [it](note:backup-capacitor).\n\n- [K-61](note:k-61) and [not](https://example.org)\n"));

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("[x](javascript:alert(1))")]
    [InlineData("[x](JavaScript:alert(1))")]
    [InlineData("![x](data:text/html;base64,AAAA)")]
    [InlineData("<javascript:alert(1)>")]
    [InlineData("a <img src=x onerror=alert(1)>")]
    public void NothingInAPageCanRun(string markdown)
    {
        var html = NoteMarkdown.Html(markdown, id => id);

        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img src=x", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("=\"javascript:", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("=\"data:", html, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>What makes a parser give up, or take minutes, is shown as it is written and hinders nothing.</summary>
    [Theory]
    [InlineData("> ", 128)]
    [InlineData("> ", 100_000)]
    [InlineData("[a](", 50_000)]
    [InlineData("[", 50_000)]
    [InlineData("![", 50_000)]
    [InlineData("*a **b ", 20_000)]
    [InlineData("- ", 5_000)]
    [InlineData("`", 50_001)]
    [InlineData("<", 50_000)]
    [InlineData("|a", 20_000)]
    public void TextThatNobodyWritesByHandIsShownAllTheSame(string piece, int times)
    {
        var markdown = "[s](note:x)\n\n" + string.Concat(Enumerable.Repeat(piece, times));

        Assert.NotEmpty(NoteMarkdown.Html(markdown, id => id));
        Assert.NotEmpty(NoteMarkdown.PlainText(markdown));
        Assert.True(NoteMarkdown.Links(markdown).Length <= 1);
    }

    [Fact]
    public void LinksLeadToNotesPages() => Assert.Equal(
        "<p><a href=\"/n/k-61\">K-61</a> <a href=\"photos/a.jpg\">p</a></p>\n",
        NoteMarkdown.Html("[K-61](note:k-61) [p](photos/a.jpg)", id => $"/n/{id}"));
}
