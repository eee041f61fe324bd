using System.Collections.Immutable;

namespace Triage.Tools.Exam.Cases;

/// <summary>Cases of a folder: ID.yaml as its writer wrote it, and beside it keys/ID.yaml with answers and judgements.</summary>
internal sealed class CaseFolder(string folder)
{
    /// <param name="ids">Only these; all when empty.</param>
    /// <exception cref="InvalidDataException">A file is no case, or one that was asked for is not there; the message says what to do.</exception>
    public ImmutableArray<ExamCase> Read(IReadOnlyCollection<string> ids)
    {
        if (!Directory.Exists(folder))
            throw new InvalidDataException($"There is no folder {folder}. Name another with --cases.");
        var there = Directory.EnumerateFiles(folder, "*.yaml").ToDictionary(f => Path.GetFileNameWithoutExtension(f)!, StringComparer.Ordinal);
        if (ids.FirstOrDefault(id => !there.ContainsKey(id)) is { } missing)
            throw new InvalidDataException($"There is no case {missing} in {folder}. There are: {string.Join(", ", there.Keys.Order(StringComparer.Ordinal))}.");
        return [.. there.Where(f => ids.Count == 0 || ids.Contains(f.Key)).OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => Case(f.Value))];
    }

    private ExamCase Case(string file)
    {
        var key = Path.Combine(folder, "keys", Path.GetFileName(file));
        return CaseReader.Read(YamlFile.Read(file), File.Exists(key) ? YamlFile.Read(key) : null);
    }
}
