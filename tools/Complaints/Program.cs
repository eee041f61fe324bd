using System.Diagnostics;
using Triage.Complaints;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Search.Meaning;
using Triage.Search.Words;

const string Usage = "Usage: tools/complaints FILE [--json] [--words-only] [--misses] [--part open|shut|odd|even]";

var (root, options) = (args[0], args[1..]);
var files = options.Where(o => !o.StartsWith('-') && o is not ("open" or "shut" or "odd" or "even")).ToList();
var part = Array.IndexOf(options, "--part") is var at and >= 0 && at + 1 < options.Length ? options[at + 1] : "all";
if (files is not [var file] || !File.Exists(file))
{
    Console.Error.WriteLine(files is [var missing] ? $"There is no file {missing}. {Usage}" : Usage);
    return 2;
}

var notes = BookReader.Read("common", Path.Combine(root, "kb", "common")).Notes;
var findings = notes.OfType<Finding>().ToList();
var recogniser = Recogniser.Build(findings, options.Contains("--words-only") ? null : new SentenceVectors(new RememberedVectors(null)), notes.OfType<DeviceClass>());
var score = new RecognitionScore(findings);
List<double> milliseconds = [];
foreach (var complaint in LabelledComplaint.Read(file).Where(c => c.IsIn(part)))
{
    var clock = Stopwatch.StartNew();
    var read = recogniser.Recognise(complaint.Words, complaint.DeviceClass is "none" ? null : complaint.DeviceClass).Findings;
    milliseconds.Add(clock.Elapsed.TotalMilliseconds);
    score.Add(complaint, read);
    if (options.Contains("--misses") && complaint.Misses(read) is { } misses)
        Console.WriteLine(misses);
}

if (!options.Contains("--json"))
{
    Console.WriteLine(score.PerFinding());
    Console.WriteLine(score.PerSureness());
    Console.WriteLine(score);
    Console.WriteLine(FormattableString.Invariant($"milliseconds a complaint: p50 {milliseconds.Order().ElementAtOrDefault(milliseconds.Count / 2):0.0}, p90 {milliseconds.Order().ElementAtOrDefault(milliseconds.Count * 9 / 10):0.0}"));
}

Console.WriteLine(score.ToJson());
return 0;
