using Triage.Measurements;
using Triage.Notes.Kinds;

namespace Triage.Notes;

/// <summary>How bad it is, what is wrong and what to write or do instead.</summary>
public sealed record ProblemText(Severity Severity, string What, string Instead);

/// <summary>Everything that can be wrong with a note, in words.</summary>
public static class NoteProblems
{
    // the file
    public static ProblemText BodyTooInvolved() => Warning(
        "Brackets or quotes stand inside one another more than forty deep here. The text is kept as it is written and shown without its Markdown.",
        "Take the nested ones out.");

    public static ProblemText Unforeseen(string what) => Error(
        $"The program met something in this note that it did not foresee ({what}). The note was not read; all others were.",
        "Take out what is unusual in it, or send the note to whoever looks after the program.");

    public static ProblemText TooLarge(long bytes, long limit) => Error(
        $"The file has {bytes / 1e6:0.#} MB; a note may have {limit / 1e6:0.#} MB. It was not read.",
        "Keep photos and long logs in files of their own and link to them.");

    public static ProblemText CannotOpen(string reason) => Error($"The file cannot be read: {reason.TrimEnd('.')}.", "Check that it exists and that you may read it.");

    public static ProblemText NotUtf8(byte value) => Error(
        $"Byte 0x{value:X2} is not UTF-8; the file is probably in an older encoding.", "Save the file as UTF-8.");

    public static ProblemText ConflictMarker() => Error(
        "A git conflict marker: two versions of this note are mixed.", "Keep the lines that are right, delete the others and the <<<<<<<, ======= and >>>>>>> lines.");

    public static ProblemText FrontMatterNotClosed() => Error("The front matter has no end.", "Write a line of --- below its last field.");

    public static ProblemText FrontMatterEmpty() => Error(
        "The front matter has no fields.", "Write format, kind, id and name between the two lines of ---.");

    // YAML
    public static ProblemText Tab() => Error("A tab indents this line; YAML takes only spaces.", "Replace the tab by spaces.");

    public static ProblemText StrayColon() => Error("A colon stands where no field can start.", "Put text that holds a colon in quotes: \"like: this\".");

    public static ProblemText OpenQuote() => Error("A quote is opened and not closed, or has something behind it.", "Close it with the same mark; inside \"…\" write \\\" for a quote.");

    public static ProblemText OpenBracket() => Error("A bracket or brace is not closed, or a comma is missing in it.", "Check the commas, and close [ with ] and { with }.");

    public static ProblemText StartsWithSymbol() => Error("A value starts with a symbol that YAML keeps for itself.", "Put the value in quotes.");

    public static ProblemText NotAField() => Error("This line is not a field like the ones around it.", "Write field: value, with a space after the colon, behind as many spaces as its neighbours.");

    public static ProblemText BrokenYaml(string reason) => Error($"This is not YAML that can be read ({reason.TrimEnd('.')}).", "Check indentation, quotes and brackets here and on the line above.");

    public static ProblemText SecondDocument() => Error("The front matter ends and starts again.", "Keep one thing a file, between two lines of ---.");

    public static ProblemText TooDeep(int limit) => Error($"Lists and fields lie more than {limit} deep in one another.", "Write it flatter.");

    public static ProblemText TooManyAliases(int limit) => Error($"More than {limit} aliases (*name).", "Write the values out.");

    public static ProblemText TooManyNodes(int limit) => Error($"More than {limit} values, aliases written out.", "Split the note, and write aliases out.");

    public static ProblemText UnknownAlias(string name) => Error($"*{name} refers to nothing above it.", $"Write &{name} before the value that it should repeat, or put the text in quotes.");

    public static ProblemText FieldNameNotText() => Error("A field's name must be a word.", "Put text that starts with [ or { in quotes.");

    public static ProblemText DuplicateField(string field, int line) => Error($"`{field}` stands here and on line {line}.", "Keep one of the two.");

    public static ProblemText NotFields() => Error("The front matter is not a list of fields.", "Write one `field: value` a line.");

    // every note
    public static ProblemText NewerFormat(string format) => Error(
        $"Format {format}: this note was made by a newer version. It can be searched, not changed or learned from.", "Use the newer version, or write it as format: 2.");

    public static ProblemText BadFormat(string format) => Error($"`{format}` is no format.", "Write format: 2.");

    public static ProblemText NoFormat() => Warning("No `format`; taken as 1.", "Write format: 1 on the first line of the front matter.");

    public static ProblemText UnknownKind(string kind, string? nearest) => Error(
        $"There is no kind `{kind}`.", nearest is null ? $"Write one of {Listed(Words.All<NoteKind>())}." : $"Write {nearest}.");

    public static ProblemText BadId(string id) => Error($"`{id}` is no id.", $"Use lower case letters, digits and hyphens: {IdFrom(id)}.");

    public static ProblemText MissingField(string field) => Error($"`{field}` is missing.", $"Write {field}: …");

    // fields
    public static ProblemText UnknownField(string field, string? nearest) => Hint(
        $"`{field}` is not a field that is known here; it is kept.", nearest is null ? "" : $"Did you mean {nearest}?");

    public static ProblemText NotText(string field) => Warning($"`{field}` should be text.", "If the text holds a colon, a bracket or a brace, put it in quotes.");

    public static ProblemText NotList(string field) => Warning($"`{field}` should be a list.", "Write [a, b], or one item a line behind a hyphen.");

    public static ProblemText NotGroup(string field) => Warning($"`{field}` should be a group of fields.", "Write {field: value, field: value}.");

    public static ProblemText NotNumber(string field, string text) => Warning(
        $"`{field}` should be a number; it is `{text}`.", text.Contains(',', StringComparison.Ordinal) ? "Write a decimal point, not a comma." : "Write a plain number such as 12 or 2.5.");

    public static ProblemText NotCount(string field, string text) => Warning($"`{field}` should be a whole number, 0 or more; it is {text}.", "Count them, and write the number.");

    public static ProblemText Negative(string field, string text) => Warning($"`{field}` cannot be less than 0; it is {text}.", "Write 0 or more.");

    public static ProblemText TooMuch(string field, string text, double most) => Warning($"`{field}` is {text}; more than {most:0} cannot be meant.", "Write the number in the unit that the format page names.");

    public static ProblemText NothingOf(string field) => Warning($"`{field}` is 0, which is never.", "Write the minutes between two times, or leave it out.");

    public static ProblemText NotYesNo(string field, string text) => Warning($"`{field}` should be true or false; it is `{text}`.", "Write true or false.");

    public static ProblemText BadDate(string field, string text) => Warning(
        $"`{field}` should be a date; it is `{text}`.", "Write 2024-03-02 or 2024-03-02T19:20:00+01:00.");

    public static ProblemText NoOffset(string field) => Hint($"`{field}` says no offset; taken as UTC.", "Write the offset: 2024-03-02T19:20:00+01:00.");

    public static ProblemText NotOneOf(string field, string text, IEnumerable<string> words, string? nearest) => Warning(
        $"`{field}` cannot be `{text}`.", nearest is null ? $"Write one of {Listed(words)}." : $"Did you mean {nearest}?");

    public static ProblemText NotChance(string field, string text) => Warning(
        $"`{field}` should be a chance; it is `{text}`.", $"Write a number between 0 and 1 with a decimal point, or one of {Listed(FrequencyWords.Table.OrderByDescending(w => w.Value).Select(w => w.Key))}.");

    public static ProblemText OutsideChance(string field, string text, bool above) => Warning(
        $"`{field}` is {text}; a chance lies between 0 and 1.", $"Write {(above ? "1, a number below it" : "0, a number above it")}, or a word such as usually.");

    public static ProblemText NotReading(MeasurementProblem problem) => Warning($"{problem.What}.", $"{char.ToUpperInvariant(problem.Instead[0])}{problem.Instead[1..]}.");

    public static ProblemText LeavesFolder(string field, string path) => Warning($"`{field}` points outside the book: {path}.", "Copy the file into the book and write its path from the book's folder.");

    // kinds
    public static ProblemText TestOfNothing() => Error(
        "This test neither reveals a finding, nor measures a part, nor decides a fault.",
        "Write reveals: with a finding, measures: with a role or part, or decides: with a fault; the last two with their outcomes:.");

    public static ProblemText TestOfTwoThings() => Error(
        "This test reveals a finding and decides a fault; it can do one of the two.", "Keep reveals: or decides:, and write a second test for the other.");

    public static ProblemText RoundOfNothing() => Error("This round reveals nothing.", "Write reveals: [finding, finding], in the order in which one looks.");

    public static ProblemText RevealsTwice(string finding) => Warning($"This round reveals `{finding}` twice.", "Name it once.");

    public static ProblemText MeasuresWithoutOutcomes() => Error("This test measures a part but lists no outcomes.", "Write outcomes:, each with given: chances by failure mode.");

    public static ProblemText DecidesWithoutOutcomes() => Error(
        "This test decides a fault but lists no outcomes.", "Write outcomes:, each with given: {present: …, absent: …}.");

    public static ProblemText NamedTwice(string field, string name, int line) => Warning(
        $"`{field}: {name}` stands here and on line {line}; this one is left out.", "Give it another name, or make one of the two.");

    public static ProblemText ModeWithoutPart() => Warning("A failure mode without the part class that has it.", "Write part: with the id of a part class.");

    public static ProblemText JobWithoutUnit() => Warning("The job does not say what is on the bench.", "Write device: or class: with an id, or unit: with what it says on the machine.");

    public static ProblemText UnknownEntry() => Warning(
        "This log entry says nothing that is known.", "Write at: and one of saw, tested, round, read, reset, held, opened, shut, taken-off, back-on, power, part, swapped, fixed, secured, skipped, counter, line.");

    // between notes
    public static ProblemText TwoNotesOneId(string id, string other) => Error(
        $"Two notes have the id `{id}`: this one and {other}. Neither is learned from.", "Give one of them an id of its own, or merge them.");

    public static ProblemText Dangling(ReferenceKind kind, string id, string? nearest) => Warning(
        $"There is no {Spoken(kind)} `{id}`.", nearest is null ? "Write its note, or correct the id." : $"Did you mean {nearest}?");

    public static ProblemText OtherKind(ReferenceKind kind, string id, NoteKind found) => Warning(
        $"`{id}` is a {Spoken(Words.Of(found))}, not a {Spoken(kind)}.", "Write another id here, or in another field.");

    public static ProblemText NotWithin(ReferenceKind kind, string id, string within, string? nearest) => Warning(
        $"`{within}` has no {Spoken(kind)} `{id}`.", nearest is null ? $"Add it to `{within}`, or correct it." : $"Did you mean {nearest}?");

    public static ProblemText NoSuchStepIn(string step, IReadOnlyList<string> machines) => Warning(
        $"{string.Join(", ", machines.Select(m => $"`{m}`"))} {(machines.Count == 1 ? "has" : "have")} no access step `{step}`, though this can be met there.",
        "Add the step to its access tree, name a step that every such machine has, or leave access: out.");

    public static ProblemText NoSuchTrait(string trait, IEnumerable<string> classes, string? nearest) => Warning(
        $"No class that this is for has builds with a trait `{trait}`: {Listed(classes)}.",
        nearest is null ? "Add the trait to builds: of the class, or leave it out here." : $"Did you mean {nearest}?");

    public static ProblemText FixDefinedTwice(string fix, string other) => Warning(
        $"The fix `{fix}` has a name here and in `{other}`; it is taken from there.", "Give it a name in one fault note only.");

    public static ProblemText Cycle(string field, IEnumerable<string> ids) => Warning(
        $"`{field}` goes in a circle: {string.Join(" → ", ids)}.", "Take one of them out.");

    // editing
    public const string NotEditable = "This note cannot be changed by the program until its front matter is put right.";

    public static string PathLeadsNowhere(string path) => $"The note has no place for `{path}`.";

    /// <summary>An id that could be made of what was written.</summary>
    public static string IdFrom(string text)
    {
        var id = string.Concat(text.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'));
        id = string.Join('-', id.Split('-', StringSplitOptions.RemoveEmptyEntries));
        return id.Length > 0 ? id : "some-id";
    }

    private static string Spoken(ReferenceKind kind) => kind switch
    {
        ReferenceKind.TestOrReset => "test or reset",
        ReferenceKind.Action => "reset or fix",
        ReferenceKind.Step => "finding, test, reset or fix",
        ReferenceKind.Mode => "failure mode",
        ReferenceKind.Access => "access step",
        ReferenceKind.TraitValue => "value",
        ReferenceKind.Protect => "protect step",
        _ => Spoken(Words.Of(kind)),
    };

    private static string Spoken(string word) => word.Replace('-', ' ');

    private static string Listed(IEnumerable<string> words) => string.Join(", ", words);

    private static ProblemText Error(string what, string instead) => new(Severity.Error, what, instead);

    private static ProblemText Warning(string what, string instead) => new(Severity.Warning, what, instead);

    private static ProblemText Hint(string what, string instead) => new(Severity.Hint, what, instead);
}
