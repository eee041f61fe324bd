using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Writing;

/// <summary>Gathers the fields of a note or of a group in it, leaving out what is not said.</summary>
internal sealed class FieldWriter
{
    private const int LineLength = 110;

    private readonly ImmutableArray<(string, YamlValue)>.Builder _fields = ImmutableArray.CreateBuilder<(string, YamlValue)>();

    /// <summary>In braces on one line.</summary>
    public YamlFields OnOneLine => new(_fields.ToImmutable());

    /// <summary>One field a line.</summary>
    public YamlFields OnLines => new(_fields.ToImmutable(), Block: true);

    public FieldWriter Value(string key, YamlValue? value)
    {
        if (value is not null)
        {
            _fields.Add((key, value));
        }

        return this;
    }

    public FieldWriter Text(string key, string? text) => Value(key, text is null ? null : YamlValue.Of(text));

    public FieldWriter Number(string key, double? number) => Value(key, number is { } n ? YamlValue.Of(n) : null);

    /// <summary>An amount that is 0 unless said.</summary>
    public FieldWriter Amount(string key, double amount) => Number(key, amount == 0 ? null : amount);

    public FieldWriter Flag(string key, bool? flag) => Value(key, flag is { } f ? YamlValue.Of(f) : null);

    /// <summary>Something that is not so unless said.</summary>
    public FieldWriter Mark(string key, bool marked) => Flag(key, marked ? true : null);

    public FieldWriter Date(string key, DateTimeOffset? date) => Value(key, date is { } d ? YamlValue.Of(d) : null);

    public FieldWriter Word<T>(string key, T? word)
        where T : struct, Enum => Text(key, word is { } w ? Words.Of(w) : null);

    public FieldWriter Chance(string key, Chance? chance) => Value(key, chance is null ? null : WriteChance.Of(chance));

    /// <summary>Texts in brackets, or one a line where they are long.</summary>
    public FieldWriter Texts(string key, ImmutableArray<string> texts) =>
        List(key, texts, YamlValue.Of, onLines: texts.Sum(t => t.Length + 2) > LineLength);

    public FieldWriter Each<T>(string key, ImmutableArray<T> items, Func<T, YamlValue> write) => List(key, items, write, onLines: true);

    public bool IsEmpty => _fields.Count == 0;

    public FieldWriter Cautions(ImmutableArray<Caution> cautions) => List("cautions", cautions, WriteEffort.Of, onLines: false);

    /// <summary>A group in braces; left out when it says nothing.</summary>
    public FieldWriter Group(string key, FieldWriter group) => Value(key, group.IsEmpty ? null : group.OnOneLine);

    private FieldWriter List<T>(string key, ImmutableArray<T> items, Func<T, YamlValue> write, bool onLines) =>
        Value(key, items.IsEmpty ? null : new YamlList([.. items.Select(write)], onLines));
}
