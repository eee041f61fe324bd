Console.WriteLine("triage");
