namespace Triage.Notes.Parsing;

/// <summary>Finds what git leaves in a file that two people changed.</summary>
internal static class ConflictMarkers
{
    private const string Ours = "<<<<<<< ";
    private const string Theirs = ">>>>>>> ";

    /// <summary>Line, from 1, of the first marker; null when there is no pair of them.</summary>
    public static int? FirstLine(string content)
    {
        var ours = AtLineStart(content, Ours, 0);
        return ours >= 0 && AtLineStart(content, Theirs, ours) >= 0 ? 1 + content.AsSpan(0, ours).Count('\n') : null;
    }

    private static int AtLineStart(string content, string marker, int from)
    {
        for (var at = from; (at = content.IndexOf(marker, at, StringComparison.Ordinal)) >= 0; at++)
        {
            if (at == 0 || content[at - 1] is '\n' or FrontMatterBounds.ByteOrderMark)
            {
                return at;
            }
        }

        return -1;
    }
}
