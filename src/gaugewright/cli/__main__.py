from gaugewright.cli import main

main()
