using System.Text;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Workshop.Exchange.Importing;
using Xunit;

namespace Triage.Workshop.Tests.Importing;

/// <summary>A table in a folder of its own, and the book beside it.</summary>
public sealed class Table : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("triage-import-");

    public string File => Path.Combine(folder.FullName, "old-jobs.csv");

    public string Book => Path.Combine(folder.FullName, "book");

    public string Imported => Path.Combine(Book, "imported");

    public static ColumnMap Map(string json)
    {
        var reading = ColumnMapFile.Parse("map.json", Encoding.UTF8.GetBytes(json));
        return reading.Map ?? throw new ArgumentException(reading.Refused!.ToString());
    }

    public Table With(string text, Encoding? encoding = null)
    {
        System.IO.File.WriteAllText(File, text, encoding ?? new UTF8Encoding(false));
        return this;
    }

    public ImportPreview Preview(ColumnMap map) => Import.Preview(File, map, Book, stop: TestContext.Current.CancellationToken);

    public ImportResult Run(ColumnMap map) => Import.Run(File, map, Book, stop: TestContext.Current.CancellationToken);

    public ImportResult BringIn(ColumnMap map)
    {
        var result = Run(map);
        Assert.Null(result.Refused);
        return result;
    }

    public Notes.Book Read() => BookReader.Read("book", Book);

    public Job Job(string id) => Read().Notes.OfType<Job>().Single(j => j.Id == id);

    /// <summary>Every file of the book with what it holds.</summary>
    public IReadOnlyDictionary<string, string> Files() => !Directory.Exists(Book) ? new Dictionary<string, string>() :
        Directory.EnumerateFiles(Book, "*", SearchOption.AllDirectories).Where(f => !f.Contains(".bench", StringComparison.Ordinal))
            .ToDictionary(f => Path.GetRelativePath(Book, f), System.IO.File.ReadAllText);

    public void Dispose() => folder.Delete(recursive: true);
}
