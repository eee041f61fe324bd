namespace Triage.Workshop.Tests;

/// <summary>Copies of the demo book and the common book.</summary>
internal static class BookCopy
{
    public static void All(string from, string to) => Copy(from, to, _ => true);

    /// <summary>Some classes of machines with their devices and jobs, where what is tested does not depend on how many there are.</summary>
    /// <param name="knowledge">Folder with both books.</param>
    /// <param name="to">Folder for the copies.</param>
    public static void OfClasses(string knowledge, string to, IEnumerable<string> classes)
    {
        var (common, demo) = (Path.Combine(knowledge, "common"), Path.Combine(knowledge, "demo"));
        var left = Directory.GetFiles(Path.Combine(common, "classes")).Select(Name).Except(classes).ToHashSet();
        var machines = Directory.GetFiles(Path.Combine(demo, "devices")).Where(f => left.Overlaps(Said(f, "class"))).Select(Name).ToHashSet();
        Copy(common, Path.Combine(to, "common"), file => file.StartsWith("findings", StringComparison.Ordinal) || !left.Overlaps(Path.ChangeExtension(file, null).Split(Path.DirectorySeparatorChar)));
        Copy(demo, Path.Combine(to, "demo"), file => !machines.Contains(Name(file)) && !machines.Overlaps(Said(Path.Combine(demo, file), "device")));
    }

    private static string Name(string file) => Path.GetFileNameWithoutExtension(file);

    private static IEnumerable<string> Said(string file, string field) =>
        file.EndsWith(".md", StringComparison.Ordinal) ? File.ReadLines(file).Where(l => l.StartsWith($"{field}: ", StringComparison.Ordinal)).Select(l => l[(field.Length + 2)..]) : [];

    private static void Copy(string from, string to, Func<string, bool> wanted)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories).Where(f => wanted(Path.GetRelativePath(from, f))))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }
}
