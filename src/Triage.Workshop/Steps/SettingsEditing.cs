using System.Collections.Immutable;
using System.Text;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;
using Triage.Workshop.Books;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Steps;

/// <summary>Changes <c>bench.yaml</c> field by field, under its folder's lock; comments and all that was not changed stay as they are.</summary>
public sealed class SettingsEditing
{
    private const string Fence = "---";

    private readonly LiveBooks bench;

    internal SettingsEditing(LiveBooks bench) => this.bench = bench;

    /// <summary>The file that the settings come from, or would go to; null when there is none and none may be written.</summary>
    public string? File => Folder is { } folder ? Path.Combine(folder.Source.Folder, SettingsFile.Name) : null;

    public bool Writable => Folder?.Source.Writable ?? false;

    /// <summary>State of the file, to be given back on saving.</summary>
    public string Version => FileVersion.Of(Folder?.Read(SettingsFile.Name));

    /// <summary>The first book that has the file, else the one that is written to.</summary>
    private BookFolder? Folder => bench.Books.Select(bench.FolderOf).FirstOrDefault(f => f?.Read(SettingsFile.Name) is not null) ?? bench.Home;

    /// <summary>Writes what is said and differs from what holds now; instruments and the drawer have their own steps.</summary>
    /// <param name="version">State of the file that the person began with; null when any will do.</param>
    public Refusal? Save(string? version, ChangedSettings said) =>
        Amounts(said.Over(new())).FirstOrDefault(a => a.Value < 0) is (_, { } words, var amount)
            ? WorkshopRefusals.Negative(words, amount)
            : Written(version, (now, text) => Changed(text, now, said.Over(now)));

    /// <summary>Writes a change of one of the file's lists; a file with something wrong in it is not changed, and none comes of it.</summary>
    /// <param name="version">State that the change was made from; null when any will do.</param>
    /// <param name="change">Made on what the file holds when its folder is locked.</param>
    internal Refusal? Change(string? version, Func<BenchSettings, NoteText, TextEdit> change) =>
        SettingsFile.Of(bench.Books).Problems is [var wrong, ..]
            ? WorkshopRefusals.NotEditable(SettingsFile.Name, $"{wrong.What} {wrong.Instead}")
            : Written(version, change);

    private Refusal? Written(string? version, Func<BenchSettings, NoteText, TextEdit> change)
    {
        if (Folder is not { Source.Writable: true } folder)
            return bench.Home is null ? WorkshopRefusals.NoWritableBook() : WorkshopRefusals.NotEditable(File!, "its book was opened for reading only.");
        Refusal? refused = null;
        byte[]? Edited(byte[]? before)
        {
            (var after, refused) = FileVersion.Of(before) == (version ?? FileVersion.Of(before)) ? After(before, change) : (null, WorkshopRefusals.TextChangedMeanwhile(SettingsFile.Name));
            return after;
        }

        var failed = folder.Read(SettingsFile.Name) is not null ? folder.Change(SettingsFile.Name, Edited)
            : Edited(null) is { } first ? folder.Create(SettingsFile.Name, first) : null;
        bench.Reread(folder, [SettingsFile.Name]);
        return refused ?? failed;
    }

    private static (byte[]? Bytes, Refusal? Refused) After(byte[]? before, Func<BenchSettings, NoteText, TextEdit> change)
    {
        try
        {
            var held = before is null ? new SettingsFile(new(), []) : SettingsFile.Of(before);
            var (bytes, refused) = Edited(before, text => change(held.Settings, text));
            return bytes is not null && SettingsFile.Of(bytes).Problems.FirstOrDefault(p => held.Problems.All(k => k.What != p.What)) is { } wrong ? (null, WorkshopRefusals.NotASetting(wrong)) : (bytes, refused);
        }
        catch (InvalidOperationException e)
        {
            return (null, WorkshopRefusals.NotEditable(SettingsFile.Name, e.Message));
        }
    }

    /// <summary>The file is edited as the front matter of a note is, between fences that are taken off again.</summary>
    private static (byte[]? Bytes, Refusal? Refused) Edited(byte[]? bytes, Func<NoteText, TextEdit> change)
    {
        var content = bytes is null ? FormattableString.Invariant($"value-of-hour: {new BenchSettings().ValueOfHour}\n") : Encoding.UTF8.GetString(bytes);
        var newLine = NoteText.Of(content).NewLine;
        var closed = content.EndsWith('\n') ? content : content + newLine;
        var (after, refused) = change(NoteText.Reread($"{Fence}{newLine}{closed}{Fence}{newLine}"));
        return (after is null ? null : Encoding.UTF8.GetBytes(after.Content[(Fence.Length + newLine.Length)..^(Fence.Length + newLine.Length)]), refused);
    }

    private static NoteText Changed(NoteText text, BenchSettings now, BenchSettings wanted)
    {
        var fields = Amounts(now).Zip(Amounts(wanted)).Where(f => f.First.Value != f.Second.Value).Select(f => (f.Second.Key, YamlValue.Of(f.Second.Value))).ToList();
        if (wanted.Currency != now.Currency)
            fields.Add(("currency", YamlValue.Of(wanted.Currency)));
        return WithTools(fields.Aggregate(text, (t, field) => t.Set([field.Key], field.Item2)), now.Tools, wanted.Tools);
    }

    private static NoteText WithTools(NoteText text, ImmutableArray<string>? now, ImmutableArray<string>? wanted)
    {
        if (wanted is not { } tools)
            return text.Remove(["tools"]);
        if (now is not { } before || before.IsEmpty || !tools.Intersect(before).Any())
            return (now ?? []).SequenceEqual(tools) && now is not null ? text : text.Set(["tools"], new YamlList([.. tools.Select(YamlValue.Of)], Block: true));
        for (var at = before.Length - 1; at >= 0; at--)
        {
            if (!tools.Contains(before[at]))
                text = text.Remove(["tools", at.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        }

        return tools.Except(before).Aggregate(text, (t, tool) => t.Append(["tools"], YamlValue.Of(tool)));
    }

    private static ImmutableArray<(string Key, string Words, double Value)> Amounts(BenchSettings settings) =>
    [
        ("value-of-hour", "value of an hour", settings.ValueOfHour),
        ("cost-of-day", "cost of a waiting day", settings.CostOfDay),
        ("usual-worth", "usual worth", settings.UsualWorth),
        ("hand-over-price", "price of handing over", settings.HandOverPrice),
    ];
}
