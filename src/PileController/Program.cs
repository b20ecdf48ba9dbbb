using PileController.Commands;

return await CommandTree.RunAsync(args, Console.Out, Console.Error);
