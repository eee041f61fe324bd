using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;

namespace Triage.Notes.Tests.Writing;

/// <summary>Edits leave every line alone that does not belong to the field.</summary>
public sealed class FrontMatterEditTests
{
    private static readonly YamlValue Entry = new YamlFields([("at", YamlValue.Of(new DateTimeOffset(2024, 3, 5, 20, 0, 0, TimeSpan.Zero))), ("line", YamlValue.Of("new: one"))]);

    private static readonly YamlValue[] Values =
    [
        YamlValue.Of("yes"), YamlValue.Of("two\nlines"), YamlValue.Of(12.5), YamlValue.Of(["a", "b: c"]),
        new YamlList([Entry, Entry], Block: true), new YamlFields([("k", YamlValue.Of("v")), ("l", new YamlList([Entry], Block: true))], Block: true),
    ];

    [Property(Arbitrary = [typeof(WrittenNotes)], MaxTest = 500)]
    public void UnchangedNoteIsTheSameBytes(WrittenNote note)
    {
        var bytes = Encoding.UTF8.GetBytes(note.Text);

        var text = NoteReader.Read("b", "n.md", bytes).Text;

        Assert.True(text.Editable);
        Assert.Equal(bytes, text.Bytes.ToArray());
        Assert.Equal(bytes, text.SetBody(text.Body).Bytes.ToArray());
    }

    [Property(Arbitrary = [typeof(WrittenNotes)], MaxTest = 1000)]
    public Property SettingAFieldChangesOnlyItsLines(WrittenNote note) =>
        Prop.ForAll(FieldAndValue(note), choice => SetsOnly(note, choice.Key, choice.Value));

    [Property(Arbitrary = [typeof(WrittenNotes)], MaxTest = 500)]
    public Property RemovingAFieldTakesOnlyItsLines(WrittenNote note) =>
        Prop.ForAll(Gen.Elements(note.Fields.Select(f => f.Key).Where(k => k != "owner")).ToArbitrary(), key =>
        {
            var (before, after) = note.Around(key);

            var removed = Read(note).Remove([key]);

            var kept = note.Fields.Single(f => f.Key == key).Lines.TakeWhile(l => l.Length == 0 || l.StartsWith('#'));
            var trailing = note.Fields.Single(f => f.Key == key).Lines.Reverse().TakeWhile(l => l.TrimStart().StartsWith('#') && l.StartsWith("  ", StringComparison.Ordinal)).Reverse();
            Assert.Equal(before + string.Concat(kept.Concat(key == "log" ? trailing : []).Select(l => l + note.NewLine)) + after, removed.Content);
        });

    [Property(Arbitrary = [typeof(WrittenNotes)], MaxTest = 500)]
    public Property AppendingChangesOnlyTheList(WrittenNote note) =>
        Prop.ForAll(Gen.Elements("log", "history").ToArbitrary(), key =>
        {
            var old = Read(note);
            var added = old.Append([key], Entry);

            AssertOthersSame(old, added, key);
            var was = Items(old, key);
            var now = Items(added, key);
            Assert.Equal([.. was, YamlRenderer.Flow(Entry)], now);
            if (note.Fields.Any(f => f.Key == key))
            {
                var (before, after) = note.Around(key);
                Assert.StartsWith(before, added.Content, StringComparison.Ordinal);
                Assert.EndsWith(after, added.Content, StringComparison.Ordinal);
            }
            else
            {
                var close = old.FrontMatterEnd;
                Assert.StartsWith(old.Content[..close], added.Content, StringComparison.Ordinal);
                Assert.EndsWith(old.Content[close..], added.Content, StringComparison.Ordinal);
            }
        });

    [Property(Arbitrary = [typeof(WrittenNotes)], MaxTest = 500)]
    public void TakingAnAppendedEntryBackGivesTheSameList(WrittenNote note)
    {
        var old = Read(note);
        var count = Items(old, "log").Count;
        var added = old.Append(["log"], Entry);

        var undone = added.Remove(["log", $"{count}"]);

        Assert.Equal(Items(old, "log"), Items(undone, "log"));
        AssertOthersSame(old, undone, "log");
        if (count > 0)
        {
            Assert.Equal(old.Content, undone.Content);
        }
    }

    [Property(Arbitrary = [typeof(WrittenNotes)], MaxTest = 500)]
    public void AnInnerFieldIsSetWithoutTouchingItsNeighbours(WrittenNote note)
    {
        var old = Read(note);

        var changed = old.Set(["consent", "originals-back"], YamlValue.Of(true));

        AssertOthersSame(old, changed, "consent");
        var consent = Assert.IsType<YamlMapping>(changed.Fields!.Find("consent")!.Value);
        Assert.Equal("true", Assert.IsType<YamlScalar>(consent.Find("originals-back")!.Value).Text);
        foreach (var field in (old.Fields!.Find("consent")?.Value as YamlMapping)?.Fields ?? [])
        {
            Assert.Equal(Written(field.Value), Written(consent.Find(field.Key.Text)!.Value));
        }
    }

    [Fact]
    public void ABodyTakesTheFilesLineEnds()
    {
        var text = Read("---\r\nformat: 1\r\n---");

        Assert.Equal("---\r\nformat: 1\r\n---\r\none\r\ntwo\r\n", text.SetBody("one\ntwo\n").Content);
    }

    [Fact]
    public void ANoteOfANewerFormatIsReadOnly()
    {
        var text = NoteReader.Read("b", "n.md", Encoding.UTF8.GetBytes("---\nformat: 9\nkind: job\n---\n")).Text;

        var refused = Assert.Throws<InvalidOperationException>(() => text.Set(["name"], YamlValue.Of("x")));
        Assert.Equal(NoteProblems.NotEditable, refused.Message);
    }

    [Fact]
    public void WhatAnAliasRepeatsCannotBeTakenOut()
    {
        var text = Read("---\nowner: &who Amsel\ntechnician: *who\n---\n");

        var refused = Assert.Throws<InvalidOperationException>(() => text.Remove(["owner"]));
        Assert.Contains(NoteProblems.UnknownAlias("who").What, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ChangingSomethingBehindAnAliasLeavesWhatItRepeats()
    {
        var text = Read("---\na: &x {k: 1, l: [1, 2]}\nb: *x   # same\n---\n");

        Assert.Equal("---\na: &x {k: 1, l: [1, 2]}\nb: {k: 1, l: [1, 5]}   # same\n---\n", text.Set(["b", "l", "1"], YamlValue.Of(5)).Content);
    }

    private static void SetsOnly(WrittenNote note, string key, YamlValue value)
    {
        var old = Read(note);
        var (before, after) = note.Around(key);

        var changed = old.Set([key], value);

        Assert.StartsWith(before, changed.Content, StringComparison.Ordinal);
        Assert.EndsWith(after, changed.Content, StringComparison.Ordinal);
        Assert.Equal(YamlRenderer.Flow(value), Written(changed.Fields!.Find(key)!.Value));
        AssertOthersSame(old, changed, key == "owner" ? "technician" : key, key);
    }

    private static Arbitrary<(string Key, YamlValue Value)> FieldAndValue(WrittenNote note) =>
        (from key in Gen.Elements(note.Fields.Select(f => f.Key))
         from value in Gen.Elements(Values)
         select (key, value)).ToArbitrary();

    private static void AssertOthersSame(NoteText old, NoteText now, params string[] except)
    {
        IEnumerable<string> Others(NoteText text) =>
            text.Fields!.Fields.Where(f => !except.Contains(f.Key.Text)).Select(f => $"{f.Key.Text}: {Written(f.Value)}");

        Assert.Equal(Others(old), Others(now));
        Assert.Equal(old.Body, now.Body);
    }

    private static List<string> Items(NoteText text, string key) => text.Fields!.Find(key)?.Value switch
    {
        null or YamlScalar { IsNull: true } => [],
        YamlSequence list => [.. list.Items.Select(Written)],
        { } one => [Written(one)],
    };

    private static string Written(YamlNode node) => YamlRenderer.Flow(YamlValue.Of(node));

    private static NoteText Read(WrittenNote note) => Read(note.Text);

    private static NoteText Read(string content) => NoteText.Reread(content);
}
