using System.Collections.Immutable;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;

namespace Triage.Workshop.Stock;

/// <summary>The drawer as <c>bench.yaml</c> lists it; an entry with something wrong in it is named and left out. Kinds of part are looked up later.</summary>
internal static class StockList
{
    public const string Field = "drawer";

    public static ImmutableArray<StockItem> Read(FieldReader fields) => fields.Each(Field, One);

    private static StockItem One(FieldReader item) => new(Part(item), Count(item))
    {
        Rating = item.Text("rating"),
        Where = item.Text("where"),
        Tested = item.Flag("tested") ?? false,
    };

    private static string Part(FieldReader item)
    {
        if (item.NeededScalar("part") is not { } part)
            return "";
        item.Refer(ReferenceKind.PartClass, part, within: null);
        return part.Text;
    }

    private static int Count(FieldReader item)
    {
        if (item.NeededScalar("count") is not { } scalar)
            return 0;
        if (int.TryParse(scalar.Text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var count))
            return count;
        item.Break(scalar, NoteProblems.NotCount("count", scalar.Text));
        return 0;
    }
}
