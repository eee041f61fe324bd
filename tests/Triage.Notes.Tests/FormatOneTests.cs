using Triage.Notes.Parsing;

namespace Triage.Notes.Tests;

/// <summary>A whole book of format 1, as it was when format 2 came: it is read for ever.</summary>
public sealed class FormatOneTests
{
    private static string Folder => Repository.PathOf("tests", "data", "format-1");

    [Fact]
    public void EveryNoteIsReadWithoutProblems()
    {
        var index = BookReader.ReadIndex("format-1", Folder);

        Assert.Empty(index.Readings.SelectMany(r => r.Problems));
        Assert.Equal(Directory.EnumerateFiles(Folder, "*.md", SearchOption.AllDirectories).Count(f => Path.GetFileName(f) != "README.md"), index.Readings.Count());
        Assert.All(index.Readings, r => Assert.Equal(1, r.Note!.Format));
    }

    [Fact]
    public void WhatItNamesIsStillThere() =>
        Assert.Empty(BookReader.ReadAll([("common", Repository.PathOf("kb", "common")), ("format-1", Folder)]).Single(b => b.Name == "format-1").Problems);
}
