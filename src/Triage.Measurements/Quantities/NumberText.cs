namespace Triage.Measurements.Quantities;

/// <summary>
/// Digits as people write them to invariant digits.
/// A lone point is the decimal mark. A lone comma is too, unless it could group thousands ("1,234"): then it is a problem,
/// because a guess could be wrong a thousandfold ("0,123" and "1,23" are safe). With spaces or apostrophes between groups of
/// three, or with both marks, the last mark is the decimal one; a mark that comes twice groups.
/// </summary>
internal static class NumberText
{
    /// <param name="number">Digits, points, commas, apostrophes and spaces only.</param>
    /// <returns>Digits with at most one point; null with a problem.</returns>
    public static string? Read(string number, out MeasurementProblem? problem)
    {
        problem = null;
        var marked = string.Concat(number.Trim().Select(c => char.IsWhiteSpace(c) || c is '\'' or '’' ? ' ' : c));
        if (IsAmbiguous(marked))
        {
            problem = MeasurementProblems.AmbiguousComma(marked);
            return null;
        }

        var decimalAt = DecimalMark(marked);
        var whole = decimalAt < 0 ? marked : marked[..decimalAt];
        var fraction = decimalAt < 0 ? "" : marked[(decimalAt + 1)..];
        if (!Grouped(whole) || !fraction.All(char.IsAsciiDigit))
        {
            problem = MeasurementProblems.BadGroups(number);
            return null;
        }

        var digits = string.Concat(whole.Where(char.IsAsciiDigit));
        return (digits.Length == 0 ? "0" : digits) + (fraction.Length == 0 ? "" : "." + fraction);
    }

    private static bool IsAmbiguous(string marked) =>
        marked.IndexOf(',', StringComparison.Ordinal) is >= 1 and <= 3 and var at
        && marked.Length == at + 4
        && marked[0] != '0'
        && marked.Count(char.IsAsciiDigit) == marked.Length - 1;

    private static int DecimalMark(string marked)
    {
        var last = marked.LastIndexOfAny(['.', ',']);
        return last >= 0 && marked.IndexOf(marked[last], StringComparison.Ordinal) == last ? last : -1;
    }

    /// <summary>No grouping, or groups of three behind one to three leading digits, all by the same mark.</summary>
    private static bool Grouped(string whole)
    {
        var marks = whole.Where(c => !char.IsAsciiDigit(c)).Distinct().ToArray();
        if (marks.Length == 0)
        {
            return true;
        }

        var groups = whole.Split(marks[0]);
        return marks.Length == 1 && groups[0].Length is >= 1 and <= 3 && groups.Skip(1).All(g => g.Length == 3);
    }
}
