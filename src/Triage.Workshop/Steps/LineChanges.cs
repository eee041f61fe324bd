using System.Collections.Immutable;

namespace Triage.Workshop.Steps;

/// <summary>Two texts line by line: the longest common sequence of lines stays, the rest came or went.</summary>
public static class LineChanges
{
    /// <summary>Pairs of lines that are compared at most; beyond that, everything between the common beginning and end counts as changed.</summary>
    private const long MostPairs = 4_000_000;

    /// <summary>Lines in the order in which one reads them: what went stands before what came in its place.</summary>
    public static ImmutableArray<ChangedLine> Between(string before, string after)
    {
        var (old, now) = (before.ReplaceLineEndings("\n").Split('\n'), after.ReplaceLineEndings("\n").Split('\n'));
        var first = old.Zip(now).TakeWhile(p => p.First == p.Second).Count();
        var last = old[first..].Reverse().Zip(now[first..].Reverse()).TakeWhile(p => p.First == p.Second).Count();
        return
        [
            .. old[..first].Select(l => new ChangedLine(LineFate.Stayed, l)),
            .. Middle(old[first..^last], now[first..^last]),
            .. old[^last..].Select(l => new ChangedLine(LineFate.Stayed, l)),
        ];
    }

    private static IEnumerable<ChangedLine> Middle(string[] old, string[] now)
    {
        if ((long)old.Length * now.Length > MostPairs)
            return [.. old.Select(Went), .. now.Select(Came)];
        var common = Common(old, now);
        var lines = new List<ChangedLine>();
        for (var (i, j) = (0, 0); i < old.Length || j < now.Length;)
        {
            if (i < old.Length && j < now.Length && old[i] == now[j])
            {
                lines.Add(new(LineFate.Stayed, old[i]));
                (i, j) = (i + 1, j + 1);
            }
            else if (i < old.Length && (j == now.Length || common[i + 1, j] >= common[i, j + 1]))
            {
                lines.Add(Went(old[i++]));
            }
            else
            {
                lines.Add(Came(now[j++]));
            }
        }

        return lines;
    }

    /// <summary>Lines in common from each pair of places on.</summary>
    private static int[,] Common(string[] old, string[] now)
    {
        var common = new int[old.Length + 1, now.Length + 1];
        for (var i = old.Length - 1; i >= 0; i--)
        {
            for (var j = now.Length - 1; j >= 0; j--)
                common[i, j] = old[i] == now[j] ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
        }

        return common;
    }

    private static ChangedLine Went(string line) => new(LineFate.Went, line);

    private static ChangedLine Came(string line) => new(LineFate.Came, line);
}

/// <summary>What became of a line.</summary>
public enum LineFate
{
    Stayed,
    Went,
    Came,
}

public sealed record ChangedLine(LineFate Fate, string Text);
