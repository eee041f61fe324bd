namespace Triage.Workshop.Answers.Wording;

/// <param name="Decibans">Weight of evidence (Good 1950), 10·log10 of the odds ratio with and without it.</param>
public sealed record WeighedEvidence(string Words, double Decibans);
