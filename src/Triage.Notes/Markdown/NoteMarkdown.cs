using System.Collections.Immutable;
using System.Net;
using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Triage.Notes.Markdown;

/// <summary>The Markdown below a note's front matter.</summary>
public static class NoteMarkdown
{
    private const string NoteScheme = "note:";

    private static readonly string[] SafeSchemes = ["http", "https", "mailto"];

    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables().UseTaskLists().UseAutoLinks().UseEmphasisExtras().UsePreciseSourceLocation()
        .DisableHtml().Build();

    /// <summary>The words alone, for searching; as it is written where it is too involved.</summary>
    public static string PlainText(string markdown) => IfParsed(markdown, m => Markdig.Markdown.ToPlainText(m)) ?? markdown;

    /// <summary>The line, from 1, from which on it is more involved than anybody writes; it is then kept and shown as plain text. Null where it is not.</summary>
    public static int? TooInvolvedAt(string markdown) => Involved.Line(markdown);

    /// <summary>Links to other notes, <c>[words](note:id)</c>, in the order of the text.</summary>
    public static ImmutableArray<NoteLink> Links(string markdown)
    {
        if (!markdown.Contains(NoteScheme, StringComparison.Ordinal) || Parsed(markdown) is not { } document)
        {
            return [];
        }

        return
        [
            .. document.Descendants<LinkInline>()
                .Where(l => l.Url?.StartsWith(NoteScheme, StringComparison.Ordinal) == true)
                .Select(l => new NoteLink(l.Url![NoteScheme.Length..], l.Line + 1, l.Column + 1)),
        ];
    }

    /// <summary>HTML without any of the raw HTML in the text, and without links that could run something.</summary>
    /// <param name="noteAddress">Address of a note's page, by id.</param>
    public static string Html(string markdown, Func<string, string> noteAddress)
    {
        if (Parsed(markdown) is not { } document)
        {
            return $"<pre>{WebUtility.HtmlEncode(markdown)}</pre>\n";
        }

        foreach (var link in document.Descendants<LinkInline>())
        {
            link.Url = Address(link.Url ?? "", noteAddress);
        }

        foreach (var link in document.Descendants<AutolinkInline>().Where(l => !l.IsEmail))
        {
            link.Url = Address(link.Url, noteAddress);
        }

        return document.ToHtml(Pipeline);
    }

    private static MarkdownDocument? Parsed(string markdown) => IfParsed(markdown, m => Markdig.Markdown.Parse(m, Pipeline));

    /// <summary>Null where it is too involved to be anything but plain text.</summary>
    private static T? IfParsed<T>(string markdown, Func<string, T> parsed)
        where T : class
    {
        try
        {
            return TooInvolvedAt(markdown) is null ? parsed(markdown) : null;
        }
        catch (ArgumentException)
        {
            // the parser's own limit of depth
            return null;
        }
    }

    private static string Address(string url, Func<string, string> noteAddress)
    {
        if (url.StartsWith(NoteScheme, StringComparison.Ordinal))
        {
            return noteAddress(url[NoteScheme.Length..]);
        }

        var path = url.IndexOfAny(['/', '?', '#']);
        var colon = url.IndexOf(':', StringComparison.Ordinal);
        var relative = colon < 0 || (path >= 0 && path < colon);
        return relative || SafeSchemes.Contains(url[..colon].ToLowerInvariant()) ? url : "";
    }
}

/// <param name="Id">Id of the note it points to.</param>
/// <param name="Line">From 1, in the Markdown.</param>
/// <param name="Column">From 1.</param>
public sealed record NoteLink(string Id, int Line, int Column);
