using System.Globalization;
using MadeUpJobs;
using Triage.Notes.Writing;
using Triage.Workshop;

if (args is not [var common, var book, var seedText, var countText]
    || !int.TryParse(seedText, CultureInfo.InvariantCulture, out var seed) || !int.TryParse(countText, CultureInfo.InvariantCulture, out var count))
{
    Console.Error.WriteLine("Say the common book, the book to write into, a seed and how many jobs: made-up-jobs COMMON BOOK SEED COUNT");
    return 2;
}

await using var bench = LiveBench.Open(new() { Books = [new("common", common), new("demo", book)], Watch = false });
var written = 0;
foreach (var job in new Years(bench.Current.Notes, seed).Jobs(count))
{
    var folder = Directory.CreateDirectory(Path.Combine(book, "jobs", job.Id[..4])).FullName;
    File.WriteAllText(Path.Combine(folder, job.Id + ".md"), NoteWriter.New(job));
    written++;
}

Console.WriteLine($"{written} jobs written into {book}");
return 0;
