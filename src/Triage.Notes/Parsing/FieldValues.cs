using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

/// <summary>The kinds of value that a field can hold. What cannot be read is named; one that its record cannot do without breaks it.</summary>
internal static class FieldValues
{
    /// <summary>Two thousand years in minutes; no price and no count of a repair comes near it.</summary>
    private const double Most = 1e9;

    extension(FieldReader fields)
    {
        public string? Text(string key) => fields.Scalar(key)?.Text;

        /// <summary>Text that the record cannot do without; null, and the record broken, when it is missing.</summary>
        public string? NeededText(string key) => fields.NeededScalar(key)?.Text;

        /// <summary>A list of texts; a single one counts as a list of one.</summary>
        public ImmutableArray<string> Texts(string key) => [.. fields.Scalars(key).Select(s => s.Text)];

        /// <summary>An id of something else; noted as a reference.</summary>
        public string? Ref(string key, ReferenceKind kind, string? within = null)
        {
            if (fields.Scalar(key) is not { } scalar)
            {
                return null;
            }

            fields.Refer(kind, scalar, within);
            return scalar.Text;
        }

        public string? NeededRef(string key, ReferenceKind kind, string? within = null)
        {
            var id = fields.Ref(key, kind, within);
            if (id is null)
            {
                fields.Break(fields.Mapping, NoteProblems.MissingField(key));
            }

            return id;
        }

        public ImmutableArray<string> Refs(string key, ReferenceKind kind, string? within = null)
        {
            var scalars = fields.Scalars(key);
            foreach (var scalar in scalars)
            {
                fields.Refer(kind, scalar, within);
            }

            return [.. scalars.Select(s => s.Text)];
        }

        /// <summary>An amount of minutes, money or days: 0 or more. A bad one breaks the record.</summary>
        public double? Amount(string key)
        {
            if (fields.Scalar(key) is not { } scalar)
            {
                return null;
            }

            if (!TryNumber(scalar.Text, out var number))
            {
                fields.Break(scalar, NoteProblems.NotNumber(key, scalar.Text));
                return null;
            }

            if (number < 0)
            {
                fields.Break(scalar, NoteProblems.Negative(key, scalar.Text));
                return null;
            }

            if (number > Most)
            {
                fields.Break(scalar, NoteProblems.TooMuch(key, scalar.Text, Most));
                return null;
            }

            return number;
        }

        /// <summary>An amount of which nothing is none.</summary>
        public double? AmountAboveNothing(string key)
        {
            var amount = fields.Amount(key);
            if (amount is not 0)
            {
                return amount;
            }

            fields.Break(fields.Scalar(key)!, NoteProblems.NothingOf(key));
            return null;
        }

        public bool? Flag(string key)
        {
            if (fields.Scalar(key) is not { } scalar)
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
                    fields.Warn(scalar, NoteProblems.NotYesNo(key, scalar.Text));
                    return null;
            }
        }

        public DateTimeOffset? Date(string key) => fields.Date(key, needed: false);

        public DateTimeOffset NeededDate(string key) => fields.Needed(key, fields.Date(key, needed: true)) ?? default;

        private DateTimeOffset? Date(string key, bool needed)
        {
            if (fields.Scalar(key) is not { } scalar)
            {
                return null;
            }

            if (NoteDate.Read(scalar.Text, out var hasOffset) is not { } date)
            {
                fields.Report(scalar, NoteProblems.BadDate(key, scalar.Text), needed);
                return null;
            }

            if (!hasOffset)
            {
                fields.Warn(scalar, NoteProblems.NoOffset(key));
            }

            return date;
        }

        /// <summary>A word of an enumeration; null when absent or unknown.</summary>
        public T? Word<T>(string key)
            where T : struct, Enum => fields.Word<T>(key, needed: false);

        public T NeededWord<T>(string key)
            where T : struct, Enum => fields.Needed(key, fields.Word<T>(key, needed: true)) ?? default;

        private T? Word<T>(string key, bool needed)
            where T : struct, Enum
        {
            if (fields.Scalar(key) is not { } scalar)
            {
                return null;
            }

            var value = Words.Find<T>(scalar.Text);
            if (value is null)
            {
                var words = Words.All<T>();
                fields.Report(scalar, NoteProblems.NotOneOf(key, scalar.Text, words, Nearest.To(scalar.Text, words)), needed);
            }

            return value;
        }

        public Chance? Chance(string key) => fields.Node(key) is { } node ? ReadChance.From(node, key, fields, needed: false) : null;

        public Chance NeededChance(string key)
        {
            if (fields.Node(key) is { } node)
            {
                return ReadChance.From(node, key, fields, needed: true) ?? new Chance(0, 0);
            }

            fields.Break(fields.Mapping, NoteProblems.MissingField(key));
            return new Chance(0, 0);
        }

        /// <summary>Chances by name, in the order of the file.</summary>
        public ImmutableArray<(YamlScalar Name, Chance Chance)> Chances(string key)
        {
            if (fields.Group(key)?.Mapping is not { } table)
            {
                return [];
            }

            return
            [
                .. table.Fields
                    .Select(f => (f.Key, Chance: ReadChance.From(f.Value, f.Key.Text, fields, needed: true)))
                    .Where(f => f.Chance is not null)
                    .Select(f => (f.Key, f.Chance!)),
            ];
        }

        /// <summary>Breaks the record when a value is missing; one that is there but bad has done so already.</summary>
        private T? Needed<T>(string key, T? value)
            where T : struct
        {
            if (value is null && !fields.Has(key))
            {
                fields.Break(fields.Mapping, NoteProblems.MissingField(key));
            }

            return value;
        }
    }

    public static bool TryNumber(string text, out double number) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out number) && double.IsFinite(number);
}
