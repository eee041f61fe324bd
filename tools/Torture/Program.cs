using System.Globalization;
using Torture;
using Torture.Attacks;

// Torture ROOT [--minutes N] [--seed S] [ATTACK…]
var (minutes, seed, names) = (1.0, 1, new List<string>());
for (var i = 1; i < args.Length; i++)
{
    if (args[i] == "--minutes")
        minutes = double.Parse(args[++i], CultureInfo.InvariantCulture);
    else if (args[i] == "--seed")
        seed = int.Parse(args[++i], CultureInfo.InvariantCulture);
    else
        names.Add(args[i]);
}

IAttack[] all = [new KilledServer(), new KilledCommand(), new FailingDisk(), new PowerCuts(), new Crowd(), new Editors(), new Switching(), new Leading()];
var attacks = all.Where(a => names.Count == 0 || names.Contains(a.Name)).ToList();
if (attacks.Count == 0)
{
    Console.Error.WriteLine($"There is no such attack. Attacks: {string.Join(", ", all.Select(a => a.Name))}.");
    return 2;
}

var template = Path.Combine(args[0], "tests", "Triage.Cli.Tests", "small-book");
var tally = attacks.ToDictionary(a => a.Name, _ => new Tally());
var end = TimeProvider.System.GetUtcNow().AddMinutes(minutes);
for (var n = 0; n < attacks.Count || TimeProvider.System.GetUtcNow() < end; n++)
{
    var attack = attacks[n % attacks.Count];
    if (attack.Cannot is null)
        tally[attack.Name] += await Round.Play(attack, template, seed + n);
}

Table.Write(Console.Out, attacks, tally);
return tally.Values.Any(t => t.IsBad) ? 1 : 0;
