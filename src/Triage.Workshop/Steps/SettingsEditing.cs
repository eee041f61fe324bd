using System.Collections.Immutable;
using System.Text;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;
using Triage.Workshop.Store;

namespace Triage.Workshop.Steps;

/// <summary>Changes <c>bench.yaml</c> field by field; comments and all that was not changed stay as they are.</summary>
public sealed class SettingsEditing
{
    private const string Fence = "---";

    private readonly LiveBench bench;

    internal SettingsEditing(LiveBench bench) => this.bench = bench;

    /// <summary>The file that the settings come from, or would go to; null when there is none and none may be written.</summary>
    public string? File => Folder is { } folder ? Path.Combine(folder.Source.Folder, SettingsFile.Name) : null;

    public bool Writable => Folder?.Source.Writable ?? false;

    /// <summary>State of the file, to be given back on saving.</summary>
    public string Version => FileVersion.Of(Folder?.Read(SettingsFile.Name));

    /// <summary>The first book that has the file, else the one that is written to.</summary>
    private BookFolder? Folder => bench.Books.Select(bench.FolderOf).FirstOrDefault(f => f?.Read(SettingsFile.Name) is not null) ?? bench.Home;

    /// <summary>Writes what differs from what holds now; instruments and the drawer have their own steps.</summary>
    public Refusal? Save(string version, BenchSettings wanted) =>
        Amounts(wanted).Where(a => a.Value < 0).Select(a => (a.Words, a.Value)).FirstOrDefault() is (string words, var amount)
            ? WorkshopRefusals.Negative(words, amount)
            : Written(version, text => Changed(text, bench.Current.Settings, wanted));

    /// <summary>Writes a change of one of the file's lists; a file with something wrong in it is not changed, and none comes of it.</summary>
    /// <param name="version">State that the change was made from; null when any will do.</param>
    internal Refusal? Change(string? version, Func<NoteText, NoteText> change) =>
        SettingsFile.Of(bench.Books).Problems is [var wrong, ..]
            ? WorkshopRefusals.NotEditable(SettingsFile.Name, $"{wrong.What} {wrong.Instead}")
            : Written(version, change);

    private Refusal? Written(string? version, Func<NoteText, NoteText> change)
    {
        if (Folder is not { Source.Writable: true } folder)
            return bench.Home is null ? WorkshopRefusals.NoWritableBook() : WorkshopRefusals.NotEditable(File!, "its book was opened for reading only.");
        var before = folder.Read(SettingsFile.Name);
        if (version is not null && FileVersion.Of(before) != version)
            return WorkshopRefusals.TextChangedMeanwhile(SettingsFile.Name);
        try
        {
            var after = After(before, change);
            if (SettingsFile.Check(after) is [var wrong, ..] && SettingsFile.Of(bench.Books).Problems.IsEmpty)
                return WorkshopRefusals.NotASetting(wrong);
            var refused = before is null ? folder.Create(SettingsFile.Name, after) : folder.Replace(SettingsFile.Name, before, after);
            bench.Reread(folder, [SettingsFile.Name]);
            return refused;
        }
        catch (InvalidOperationException e)
        {
            return WorkshopRefusals.NotEditable(SettingsFile.Name, e.Message);
        }
    }

    /// <summary>The file is edited as the front matter of a note is, between fences that are taken off again.</summary>
    private byte[] After(byte[]? bytes, Func<NoteText, NoteText> change)
    {
        var content = bytes is null ? FormattableString.Invariant($"value-of-hour: {bench.Current.Settings.ValueOfHour}\n") : Encoding.UTF8.GetString(bytes);
        var newLine = NoteText.Of(content).NewLine;
        var closed = content.EndsWith('\n') ? content : content + newLine;
        var text = NoteText.Reread($"{Fence}{newLine}{closed}{Fence}{newLine}");
        return Encoding.UTF8.GetBytes(change(text).Content[(Fence.Length + newLine.Length)..^(Fence.Length + newLine.Length)]);
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
    ];
}
