using System.Text.Json;
using System.Text.Json.Serialization;
using Triage.Reasoning.Learning;

namespace Triage.Workshop.Model;

/// <summary>
/// What learning was fitted to, kept from one start to the next by what the books held, one small file each. A cache: a missing or damaged file is fitted
/// anew, and so is everything after the program itself has changed.
/// </summary>
public sealed class RememberedFits(string folder)
{
    private const int Most = 40;

    private static readonly JsonSerializerOptions Numbers = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    private static readonly string Program = typeof(Fit).Module.ModuleVersionId.ToString("N");

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

    /// <summary>Written beside first, then renamed, so that nobody reads half of one. A folder that cannot be written costs only time at the next start.</summary>
    public void Keep(UInt128 books, Fit fit)
    {
        var file = FileOf(books);
        var beside = $"{file}.{Environment.ProcessId}";
        try
        {
            Directory.CreateDirectory(folder);
            File.WriteAllBytes(beside, JsonSerializer.SerializeToUtf8Bytes(fit, Numbers));
            File.Move(beside, file, overwrite: true);
            foreach (var old in new DirectoryInfo(folder).GetFiles().OrderByDescending(f => f.LastWriteTimeUtc).Skip(Most))
                old.Delete();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            File.Delete(beside);
        }
    }

    private string FileOf(UInt128 books) => Path.Combine(folder, $"{Program}-{books:x32}.json");
}
