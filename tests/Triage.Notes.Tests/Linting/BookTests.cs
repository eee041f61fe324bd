using System.Text;
using Triage.Notes.Kinds;
using Triage.Notes.Linting;
using Triage.Notes.Parsing;

namespace Triage.Notes.Tests.Linting;

/// <summary>Notes of a folder, and of several books together.</summary>
public sealed class BookTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory();

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void EveryNoteBelowTheFolderIsReadInTheOrderOfPaths()
    {
        Write("b/two.md", Class("two"));
        Write("a.md", Class("one"));
        Write("README.md", "# no note\n");
        Write(".git/three.md", Class("three"));
        Write("photo.txt", Class("four"));

        var book = BookReader.Read("mine", _folder.FullName);

        Assert.Equal(["a.md", "b/two.md"], book.Notes.Select(n => n.Place.Path));
        Assert.Empty(book.Problems);
        Assert.Empty(book.SearchOnly);
    }

    [Fact]
    public void LinksOutOfTheFolderAreNotFollowed()
    {
        var outside = Directory.CreateTempSubdirectory();
        File.WriteAllText(Path.Combine(outside.FullName, "x.md"), Class("outside"));
        Directory.CreateSymbolicLink(Path.Combine(_folder.FullName, "linked"), outside.FullName);
        File.CreateSymbolicLink(Path.Combine(_folder.FullName, "x.md"), Path.Combine(outside.FullName, "x.md"));

        Assert.Empty(BookReader.Read("mine", _folder.FullName).Notes);
        outside.Delete(recursive: true);
    }

    [Fact]
    public void OneBadNoteNeverStopsTheOthers()
    {
        Write("bad.md", "---\nname: [\n---\nstill findable\n");
        Write("good.md", Class("good"));

        var book = BookReader.Read("mine", _folder.FullName);

        Assert.Equal("good", Assert.Single(book.Notes).Id);
        Assert.Equal("still findable\n", Assert.Single(book.SearchOnly).Text.Body);
    }

    [Fact]
    public void AFileThatIsGoneIsNamed() => Assert.Equal(
        NoteProblems.CannotOpen("it is gone").What, Assert.Single(BookReader.ReadFile("mine", _folder.FullName, "gone.md").Problems).What);

    [Fact]
    public void NotesThatShareAnIdAreBothNamedAndNeitherIsUsed()
    {
        Write("a.md", Class("same"));
        Write("b.md", Class("same"));

        var book = BookReader.Read("mine", _folder.FullName);

        Assert.Empty(book.Notes);
        Assert.Equal(["a.md", "b.md"], book.SearchOnly.Select(r => r.Note!.Place.Path));
        Assert.Equal([NoteProblems.TwoNotesOneId("same", "b.md").What, NoteProblems.TwoNotesOneId("same", "a.md").What], book.Problems.Select(p => p.What));
    }

    [Fact]
    public void NotesOfTwoBooksThatShareAnIdAreBothNamed()
    {
        var books = Linter.Check([Book("mine", Class("same")), Book("theirs", Class("same"))]);

        Assert.All(books, b => Assert.Empty(b.Notes));
        Assert.Equal(NoteProblems.TwoNotesOneId("same", "0.md in theirs").What, Assert.Single(books[0].Problems).What);
        Assert.Equal(NoteProblems.TwoNotesOneId("same", "0.md in mine").What, Assert.Single(books[1].Problems).What);
    }

    [Fact]
    public void ReferencesMayCrossBooks()
    {
        var common = Book("common", Class("radio"));
        var mine = Book("mine", "---\nformat: 1\nkind: device\nid: r-1\nname: R-1\nclass: radio\n---\n");

        Assert.All(Linter.Check([common, mine]), b => Assert.Empty(b.Problems));
        Assert.Equal(NoteProblems.Dangling(ReferenceKind.DeviceClass, "radio", null).What, Assert.Single(Linter.Check([mine])[0].Problems).What);
    }

    [Fact]
    public void OneChangedFileGivesTheSameBookAsReadingAll()
    {
        var a = Reading("a.md", Class("one"));
        var b = Reading("b.md", Class("one"));
        var renamed = Reading("b.md", Class("two").Replace("name:", "formerly: [old]\nname:", StringComparison.Ordinal));
        var index = BookIndex.Of("mine", [a, b]);

        var changed = index.With(renamed);

        Assert.Null(index.Resolve("one"));
        Assert.Equal("a.md", changed.Resolve("one")!.Place.Path);
        Assert.Equal("two", changed.Resolve("old")!.Id);
        AssertSame(BookIndex.Of("mine", [a, renamed]).ToBook(), changed.ToBook());
        AssertSame(BookIndex.Of("mine", [a]).ToBook(), changed.Without("b.md").ToBook());
        Assert.Null(changed.Without("b.md").Resolve("old"));
    }

    private static void AssertSame(Book expected, Book actual)
    {
        Assert.Equal(expected.Notes, actual.Notes);
        Assert.Equal(expected.Problems, actual.Problems);
    }

    private static Book Book(string name, params string[] contents) =>
        BookIndex.Of(name, contents.Select((c, i) => NoteReader.Read(name, $"{i}.md", Encoding.UTF8.GetBytes(c)))).ToBook();

    private static NoteReading Reading(string path, string content) => NoteReader.Read("mine", path, Encoding.UTF8.GetBytes(content));

    private static string Class(string id) => $"---\nformat: 1\nkind: device-class\nid: {id}\nname: Class {id}\n---\n";

    private void Write(string path, string content)
    {
        var file = new FileInfo(Path.Combine(_folder.FullName, path));
        file.Directory!.Create();
        File.WriteAllText(file.FullName, content);
    }
}
