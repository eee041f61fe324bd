using YamlDotNet.Core;

namespace Triage.Notes.Parsing;

/// <summary>What the YAML parser complains of, in plain words and with what to do.</summary>
internal static class YamlMistake
{
    /// <param name="line">Line of the file on which <paramref name="start"/> lies, from 1.</param>
    public static NoteSyntaxException Of(YamlException mistake, string content, int start, int end, int line)
    {
        if (IndentingTab(content, start, end, line) is { } tab)
        {
            return new NoteSyntaxException(tab.Line, tab.Column, NoteProblems.Tab());
        }

        return new NoteSyntaxException(line + (int)mistake.Start.Line - 1, (int)mistake.Start.Column, InWords(mistake.Message));
    }

    private static (int Line, int Column)? IndentingTab(string content, int start, int end, int line)
    {
        var column = 1;
        var indenting = true;
        for (var i = start; i < end; i++)
        {
            switch (content[i])
            {
                case '\n':
                    (line, column, indenting) = (line + 1, 1, true);
                    continue;
                case '\t' when indenting:
                    return (line, column);
                case ' ':
                    break;
                default:
                    indenting = false;
                    break;
            }

            column++;
        }

        return null;
    }

    private static ProblemText InWords(string message)
    {
        bool Says(string words) => message.Contains(words, StringComparison.OrdinalIgnoreCase);

        return message switch
        {
            _ when Says("mapping values are not allowed") || Says("invalid mapping") => NoteProblems.StrayColon(),
            _ when Says("quoted scalar") => NoteProblems.OpenQuote(),
            _ when Says("flow sequence") || Says("flow mapping") => NoteProblems.OpenBracket(),
            _ when Says("cannot start any token") => NoteProblems.StartsWithSymbol(),
            _ when Says("simple key") || Says("expected ':'") || Says("expected key") || Says("block collection") || Says("block mapping") || Says("'-' indicator") => NoteProblems.NotAField(),
            _ => NoteProblems.BrokenYaml(message),
        };
    }
}
