import{u as e,a as o,P as r}from"./index-i2VKTpNF.js";function i(s){const{jobs:t}=e();return o("main",{children:o(r,{title:t.title})})}export{i as Room};
