using System.Text.Json;
using System.Text.Json.Serialization;
using Triage.Measurements.Instruments;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Workshop.Books;

namespace Triage.Workshop.Model;

/// <summary>
/// What learning was fitted to, kept from one start to the next by what the books held, one small file each. A cache: a missing or damaged file is fitted
/// anew, and so is everything after the program itself has changed.
/// </summary>
public sealed class RememberedFits(string folder)
{
    private const int Most = 40;

    private static readonly JsonSerializerOptions Numbers = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    /// <summary>Whatever has a part in what notes and jobs come to: reading, measuring, translating, fitting.</summary>
    private static readonly string Program = string.Concat(
        new[] { typeof(Note), typeof(Instrument), typeof(RememberedFits), typeof(Fit) }.Select(t => t.Module.ModuleVersionId.ToString("N")[..8]));

    /// <param name="books">What tells the books' state from any other.</param>
    public Fit? Find(UInt128 books)
    {
        try
        {
            return JsonSerializer.Deserialize<Fit>(File.ReadAllBytes(FileOf(books)), Numbers);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or JsonException)
        {
            return null;
        }
    }

    /// <summary>A folder that cannot be written costs only time at the next start.</summary>
    public void Keep(UInt128 books, Fit fit)
    {
        try
        {
            Directory.CreateDirectory(folder);
            WholeFile.Write(FileOf(books), JsonSerializer.SerializeToUtf8Bytes(fit, Numbers), still: () => true);
            foreach (var old in new DirectoryInfo(folder).GetFiles().OrderByDescending(f => f.LastWriteTimeUtc).Skip(Most))
                old.Delete();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // it is only a cache
        }
    }

    private string FileOf(UInt128 books) => Path.Combine(folder, $"{Program}-{books:x32}.json");
}
