using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

/// <summary>
/// Reads the fields of one mapping by name and type. What is wrong goes to the log with its place; a field that cannot be read is
/// left out; one that its record cannot do without breaks it (<see cref="Broken"/>). <see cref="Done"/> names what nobody asked for.
/// </summary>
internal sealed class FieldReader(YamlMapping mapping, NoteLog log, bool isNote = false)
{
    private readonly HashSet<string> _known = [];

    public YamlMapping Mapping => mapping;

    /// <summary>The record cannot be used.</summary>
    public bool Broken { get; private set; }

    /// <summary>The value of a field; null when it is absent or empty.</summary>
    public YamlNode? Node(string key)
    {
        _known.Add(key);
        return mapping.Find(key)?.Value is { } value and not YamlScalar { IsNull: true } ? value : null;
    }

    public bool Has(string key) => Node(key) is not null;

    public YamlScalar? Scalar(string key)
    {
        switch (Node(key))
        {
            case null:
                return null;
            case YamlScalar scalar:
                return scalar;
            case { } other:
                Bad(other, NoteProblems.NotText(key));
                return null;
        }
    }

    public YamlScalar? NeededScalar(string key)
    {
        var scalar = Scalar(key);
        if (scalar is null)
        {
            Break(mapping, NoteProblems.MissingField(key));
        }

        return scalar;
    }

    public string? Text(string key) => Scalar(key)?.Text;

    /// <summary>Text that the record cannot do without; null, and the record broken, when it is missing.</summary>
    public string? NeededText(string key) => NeededScalar(key)?.Text;

    /// <summary>A list of texts; a single one counts as a list of one.</summary>
    public ImmutableArray<string> Texts(string key) => [.. Scalars(key).Select(s => s.Text)];

    /// <summary>An id of something else; noted as a reference.</summary>
    public string? Ref(string key, ReferenceKind kind, string? within = null)
    {
        if (Scalar(key) is not { } scalar)
        {
            return null;
        }

        log.Refer(kind, scalar, within);
        return scalar.Text;
    }

    public string? NeededRef(string key, ReferenceKind kind, string? within = null)
    {
        var id = Ref(key, kind, within);
        if (id is null)
        {
            Break(mapping, NoteProblems.MissingField(key));
        }

        return id;
    }

    public ImmutableArray<string> Refs(string key, ReferenceKind kind, string? within = null)
    {
        var scalars = Scalars(key);
        foreach (var scalar in scalars)
        {
            log.Refer(kind, scalar, within);
        }

        return [.. scalars.Select(s => s.Text)];
    }

    /// <summary>Paths of files inside the book.</summary>
    public ImmutableArray<string> Files(string key) =>
        [.. Scalars(key).Where(s => StaysInside(key, s)).Select(s => s.Text)];

    public string? NeededFile(string key)
    {
        var file = NeededScalar(key);
        Broken |= file is not null && !StaysInside(key, file);
        return file?.Text;
    }

    /// <summary>An amount of minutes, money or days: 0 or more. A bad one breaks the record.</summary>
    public double? Amount(string key)
    {
        if (Scalar(key) is not { } scalar)
        {
            return null;
        }

        if (!TryNumber(scalar.Text, out var number))
        {
            Break(scalar, NoteProblems.NotNumber(key, scalar.Text));
            return null;
        }

        if (number < 0)
        {
            Break(scalar, NoteProblems.Negative(key, scalar.Text));
            return null;
        }

        return number;
    }

    public bool? Flag(string key)
    {
        if (Scalar(key) is not { } scalar)
        {
            return null;
        }

        switch (scalar.Text.ToLowerInvariant())
        {
            case "true" or "yes" or "on":
                return true;
            case "false" or "no" or "off":
                return false;
            default:
                Bad(scalar, NoteProblems.NotYesNo(key, scalar.Text));
                return null;
        }
    }

    public DateTimeOffset? Date(string key)
    {
        if (Scalar(key) is not { } scalar)
        {
            return null;
        }

        if (NoteDate.Read(scalar.Text, out var hasOffset) is not { } date)
        {
            Bad(scalar, NoteProblems.BadDate(key, scalar.Text));
            return null;
        }

        if (!hasOffset)
        {
            log.Add(scalar, NoteProblems.NoOffset(key));
        }

        return date;
    }

    public DateTimeOffset NeededDate(string key) => Needed(key, Date(key)) ?? default;

    /// <summary>A word of an enumeration; null when absent or unknown.</summary>
    public T? Word<T>(string key)
        where T : struct, Enum
    {
        if (Scalar(key) is not { } scalar)
        {
            return null;
        }

        var value = Words.Find<T>(scalar.Text);
        if (value is null)
        {
            var words = Words.All<T>();
            Bad(scalar, NoteProblems.NotOneOf(key, scalar.Text, words, Nearest.To(scalar.Text, words)));
        }

        return value;
    }

    public T NeededWord<T>(string key)
        where T : struct, Enum => Needed(key, Word<T>(key)) ?? default;

    public Chance? Chance(string key) => Node(key) is { } node ? ReadChance.From(node, key, log) : null;

    public Chance NeededChance(string key) => Needed(key, Chance(key)) ?? new Chance(0, 0);

    /// <summary>Chances by name, in the order of the file.</summary>
    public ImmutableArray<(YamlScalar Name, Chance Chance)> Chances(string key)
    {
        if (Group(key)?.Mapping is not { } table)
        {
            return [];
        }

        return
        [
            .. table.Fields
                .Select(f => (f.Key, Chance: ReadChance.From(f.Value, f.Key.Text, log)))
                .Where(f => f.Chance is not null)
                .Select(f => (f.Key, f.Chance!)),
        ];
    }

    /// <summary>A group of fields; null when absent. Call its <see cref="Done"/> when it has been read.</summary>
    public FieldReader? Group(string key)
    {
        switch (Node(key))
        {
            case null:
                return null;
            case YamlMapping group:
                return new FieldReader(group, log);
            case { } other:
                Bad(other, NoteProblems.NotGroup(key));
                return null;
        }
    }

    /// <summary>A list of groups, each read into a record; broken ones are left out.</summary>
    /// <param name="vital">A broken one breaks this record too.</param>
    public ImmutableArray<T> Each<T>(string key, Func<FieldReader, T> read, bool vital = false)
    {
        var all = ImmutableArray.CreateBuilder<T>();
        foreach (var item in Items(key))
        {
            if (item is not YamlMapping group)
            {
                Report(item, NoteProblems.NotGroup(key), vital);
                continue;
            }

            var fields = new FieldReader(group, log, isNote && vital);
            var record = read(fields);
            fields.Done();
            Broken |= vital && fields.Broken;
            if (!fields.Broken)
            {
                all.Add(record);
            }
        }

        return all.ToImmutable();
    }

    /// <summary>The items of a list; a value that is no list counts as a list of one.</summary>
    public ImmutableArray<YamlNode> Items(string key) => Node(key) switch
    {
        null => [],
        YamlSequence sequence => sequence.Items,
        { } one => [one],
    };

    public void Warn(YamlNode at, ProblemText text) => log.Add(at, text);

    public void Refer(ReferenceKind kind, YamlScalar at, string? within) => log.Refer(kind, at, within);

    /// <summary>A reader of a mapping inside this one.</summary>
    public FieldReader Inner(YamlMapping inner) => new(inner, log);

    /// <summary>The record cannot be used: an error when it is the note itself.</summary>
    public void Break(YamlNode at, ProblemText text)
    {
        Broken = true;
        log.Add(at, text, isNote ? Severity.Error : text.Severity == Severity.Error ? Severity.Warning : text.Severity);
    }

    /// <summary>Names the fields that nobody asked for.</summary>
    public void Done()
    {
        foreach (var field in mapping.Fields.Where(f => !_known.Contains(f.Key.Text)))
        {
            log.Add(field.Key, NoteProblems.UnknownField(field.Key.Text, Nearest.To(field.Key.Text, _known)));
        }
    }

    private void Bad(YamlNode at, ProblemText text) => log.Add(at, text);

    private void Report(YamlNode at, ProblemText text, bool vital)
    {
        if (vital)
        {
            Break(at, text);
        }
        else
        {
            Bad(at, text);
        }
    }

    private T? Needed<T>(string key, T? value)
        where T : struct
    {
        BreakWithout(key, value is not null);
        return value;
    }

    private Chance? Needed(string key, Chance? value)
    {
        BreakWithout(key, value is not null);
        return value;
    }

    /// <summary>A value that is there but bad has been named already; it still breaks the record.</summary>
    private void BreakWithout(string key, bool present)
    {
        if (!present && Has(key) && !isNote)
        {
            Broken = true;
        }
        else if (!present)
        {
            Break(Node(key) ?? mapping, NoteProblems.MissingField(key));
        }
    }

    private ImmutableArray<YamlScalar> Scalars(string key)
    {
        var all = ImmutableArray.CreateBuilder<YamlScalar>();
        foreach (var item in Items(key))
        {
            if (item is YamlScalar scalar)
            {
                all.Add(scalar);
            }
            else
            {
                Bad(item, NoteProblems.NotText(key));
            }
        }

        return all.ToImmutable();
    }

    private bool StaysInside(string key, YamlScalar file)
    {
        var path = file.Text;
        var inside = !path.StartsWith('/') && !path.Contains('\\', StringComparison.Ordinal) && !path.Contains(':', StringComparison.Ordinal)
            && !path.Split('/').Contains("..");
        if (!inside)
        {
            Bad(file, NoteProblems.LeavesFolder(key, path));
        }

        return inside;
    }

    public static bool TryNumber(string text, out double number) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out number) && double.IsFinite(number);
}
