using System.Globalization;
using Triage.Notes.Kinds;
using Triage.Search.Indexing;
using Triage.SearchBench;
using Triage.Workshop;

if (Options.Read(args) is not { } options)
{
    Console.Error.WriteLine("bench-search KB [--notes N] [--seed S]: N from 1,000 (100,000 unless said), S any whole number (1 unless said)");
    return 2;
}

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
await using var bench = LiveBench.Open(new() { Books = [new("common", Path.Combine(options.Books, "common")), new("demo", Path.Combine(options.Books, "demo"))], Watch = false });
Func<string, Note?> find = bench.Current.Notes.Find<Note>;
var notes = MadeUpShelf.Of(bench.Current.Notes, options.Notes, options.Seed);
IndexedNote[] words = [.. notes.AsParallel().AsOrdered().Select(n => IndexedNote.From(n, find))];
var questions = Questions.About(notes, options.Seed);
Console.Error.WriteLine($"{notes.Length} notes made up, {words.Sum(w => RawLucene.Texts(w).Sum(t => (long)t.Text.Length)) / 1e6:F0} MB of text");

var filling = Filling.Of(notes, words, find);
Console.Error.WriteLine("indexed");
var asking = Asking.Of(notes, words, questions, find);
Report.Print(Console.Out, options, filling, asking);
return 0;
