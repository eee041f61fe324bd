using Ganss.Xss;
using Microsoft.AspNetCore.Components;
using Triage.Notes.Markdown;

namespace Triage.Service.NotePages;

/// <summary>A note's Markdown as HTML that can do nothing but be read.</summary>
internal static class NoteHtml
{
    private static readonly string[] Tags =
    [
        "p", "br", "hr", "h1", "h2", "h3", "h4", "h5", "h6", "ul", "ol", "li", "blockquote", "pre", "code", "em", "strong", "del", "ins", "sub", "sup", "mark",
        "a", "img", "table", "thead", "tbody", "tr", "th", "td",
    ];

    public static MarkupString Of(string markdown)
    {
        var sanitizer = new HtmlSanitizer(new HtmlSanitizerOptions
        {
            AllowedTags = Tags.ToHashSet(StringComparer.OrdinalIgnoreCase),
            AllowedAttributes = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { "href", "title", "alt", "start" },
            AllowedSchemes = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { "http", "https", "mailto" },
            UriAttributes = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { "href" },
        });
        return new(sanitizer.Sanitize(NoteMarkdown.Html(markdown, id => $"/notes/{Uri.EscapeDataString(id)}")));
    }
}
