using System.Text.RegularExpressions;
using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using Assembly = System.Reflection.Assembly;

namespace Triage.House.Tests;

/// <summary>A project's rooms, and which uses which. A folder is a room; a file that lies in none is a room of its own.</summary>
internal sealed partial class Rooms
{
    private readonly string name;
    private readonly Dictionary<string, string> fileOf;
    private readonly ILookup<string, (string To, string Example)> uses;

    private Rooms(string project, IEnumerable<IType> types)
    {
        name = $"Triage.{project}";
        fileOf = Directory.GetFiles(Path.Combine(Checkout.Root, "src", name), "*.cs")
            .SelectMany(file => Declared.Matches(File.ReadAllText(file)).Select(m => (Type: m.Groups[1].Value, File: Path.GetFileName(file))))
            .ToDictionary(d => d.Type, d => d.File, StringComparer.Ordinal);
        uses = (from type in types.Where(IsOurs)
                from used in type.Dependencies.Select(d => d.Target).Where(IsOurs)
                where RoomOf(used) != RoomOf(type)
                select (From: RoomOf(type), To: RoomOf(used), Example: $"{type.Name} uses {used.Name}"))
            .DistinctBy(u => (u.From, u.To))
            .ToLookup(u => u.From, u => (u.To, u.Example), StringComparer.Ordinal);
    }

    public static Rooms Of(string project) =>
        new(project, new ArchLoader().LoadAssembly(Assembly.Load(project == "Cli" ? "triage" : $"Triage.{project}")).Build().Types);

    public IEnumerable<string> All => Arrows.SelectMany(a => new[] { a.From, a.To }).Distinct();

    /// <summary>One room using another, with one type that does.</summary>
    public IEnumerable<(string From, string To, string Example)> Arrows =>
        uses.SelectMany(from => from.Select(u => (from.Key, u.To, u.Example)));

    /// <summary>Arrows on a way that leads back to where it began.</summary>
    public IEnumerable<string> InRings => Arrows.Where(a => Reached(a.To).Contains(a.From)).Select(a => $"{a.From} → {a.To}: {a.Example}");

    private HashSet<string> Reached(string from)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal);
        var next = new Stack<string>([from]);
        while (next.TryPop(out var room))
        {
            foreach (var (to, _) in uses[room].Where(u => reached.Add(u.To)))
                next.Push(to);
        }

        return reached;
    }

    /// <summary>A type parameter belongs to whatever declares it, not to a room.</summary>
    private bool IsOurs(IType type) =>
        type is not GenericParameter && type.Namespace?.FullName is { } space && (space == name || space.StartsWith(name + ".", StringComparison.Ordinal));

    private string RoomOf(IType type) => type.Namespace.FullName == name
        ? fileOf.GetValueOrDefault(Outermost(type), Outermost(type))
        : type.Namespace.FullName[(name.Length + 1)..].Replace('.', '/');

    private string Outermost(IType type) => type.FullName[(name.Length + 1)..].Split('+', '/', '`', '<')[0];

    [GeneratedRegex(@"^(?:public |internal |static |sealed |abstract |readonly |partial )*(?:class|record struct|record|struct|enum|interface) (\w+)", RegexOptions.Multiline)]
    private static partial Regex Declared { get; }
}
